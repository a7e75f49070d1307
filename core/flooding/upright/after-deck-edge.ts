import { at } from '../../base';
import { gmDeckUnder } from '../../stability';
import type { SimulationResult } from '../simulate/ship';
import type { ScreenCase } from './cases';
import { centreAfter, type ResolvedShip } from './resolved';
import type { AfterDeckEdge } from './types';

/** Air still aboard at the end: tight compartments, and what the simulation leaves at the top of flooded ones. */
interface Pocket {
  readonly volume: number;
  readonly height: number;
}

function pockets(ship: ResolvedShip, run: SimulationResult): Pocket[] {
  const tight = ship.input.compartments
    .filter(({ floods }) => floods === false)
    .map(({ x0, x1, y0, y1, z0, z1, permeability }) => ({
      volume: (x1 - x0) * (y1 - y0) * (z1 - z0) * permeability,
      height: (z0 + z1) / 2,
    }));
  const left = run.trappedAir.map(({ room, share }): Pocket => {
    const { compartment, solid } = at(ship.spaces, room);
    const { z0, z1 } = compartment;
    return { volume: share * solid.capacity, height: z1 - (share * (z1 - z0)) / 2 };
  });
  return [...tight, ...left];
}

/**
 * What comes after the deck edge, which the section check cannot follow. With the deck just under, the waterplane is
 * the footprint of the superstructure alone; under altogether, the steel has no lever of its own and the air still
 * aboard decides: above the centre of gravity it holds her upright, below it turns her over. Screening.
 */
export function afterDeckEdge(ship: ResolvedShip, likely: ScreenCase, run: SimulationResult): AfterDeckEdge {
  const { kg } = centreAfter(ship.input, likely.displacement, likely.kg);
  const last = likely.path.levels.at(-1);
  const house = ship.input.superstructure;
  const footprint = house && (house.length * house.breadth ** 3) / 12;
  const gm = last && footprint !== undefined ? gmDeckUnder(last.ship, kg, footprint) : undefined;
  const air = pockets(ship, run);
  const volume = air.reduce((sum, pocket) => sum + pocket.volume, 0);
  const lever =
    volume > 0
      ? air.reduce((sum, pocket) => sum + pocket.volume * pocket.height, 0) / volume - kg
      : undefined;
  return {
    ...(gm === undefined ? {} : { houseGmMetres: gm }),
    airCubicMetres: volume,
    ...(lever === undefined ? {} : { airLeverMetres: lever }),
    notes: [...deckNote(gm), airNote(volume, lever)],
  };
}

function deckNote(gm: number | undefined): string[] {
  if (gm === undefined)
    return ['What stands above the deck is not known: nothing is said about the deck edge under.'];
  const words = gm >= 0 ? 'holds her for small angles' : 'does not hold her upright';
  return [
    `With the deck just under, the footprint of the superstructure alone ${words}: GM ${gm.toFixed(2)} m.`,
  ];
}

function airNote(volume: number, lever: number | undefined): string {
  if (lever === undefined)
    return 'No air stays aboard in the simulation: under water nothing rights or turns her but the flow.';
  const where = lever >= 0 ? 'above' : 'below';
  const does = lever >= 0 ? 'it helps to hold her upright' : 'it turns her over on the way down';
  return `${volume.toFixed(0)} m3 of air stay aboard, ${Math.abs(lever).toFixed(1)} m ${where} the centre of gravity: ${does}.`;
}
