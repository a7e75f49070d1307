import { at } from '../../base';
import { dry, type Wetted } from '../geometry/wetted';
import { attitude, UPRIGHT, type Solid } from './body';
import { fillLevel } from './fill-level';

/** A ship with water aboard: fixed volumes of water in her spaces, free to move as she heels. */
export interface WetShip {
  readonly hull: Solid;
  readonly spaces: readonly Solid[];
  /** Water in each space, m3. */
  readonly volumes: readonly number[];
  /** Volume of the light displacement, m3. */
  readonly lightVolume: number;
}

/** Where the light weight acts: height above the keel and distance to starboard of the centreline, metres. */
export interface Centre {
  readonly kg: number;
  readonly tcg: number;
}

/** All the water she displaces, m3. */
export function displacedVolume(ship: WetShip): number {
  return ship.volumes.reduce((sum, volume) => sum + volume, ship.lightVolume);
}

/**
 * First moment to starboard (m4) of the water outside less the water inside, at constant volumes, even keel.
 * @param levels where the levels of hull and spaces were last, kept between calls to start the search from.
 */
export function waterMoment(ship: WetShip, heel: number, sum: Wetted = dry(), levels: number[] = []): number {
  const heeled = attitude(heel);
  levels[0] = fillLevel(ship.hull, heeled, displacedVolume(ship), sum, levels[0]);
  let moment = sum.mu;
  ship.volumes.forEach((volume, i) => {
    if (volume <= 0) return;
    levels[i + 1] = fillLevel(at(ship.spaces, i), heeled, volume, sum, levels[i + 1]);
    moment -= sum.mu;
  });
  return moment;
}

/** The moment of the light weight itself, m4. */
export function weightMoment(lightVolume: number, centre: Centre, heel: number): number {
  return lightVolume * (centre.tcg * Math.cos(heel) + centre.kg * Math.sin(heel));
}

/**
 * Righting moment over the density of the water, m4, at a heel (radians, to starboard): positive turns her to
 * port, negative to starboard. Real wedges of water inside and outside; the trim is left out.
 */
export function rightingMoment(ship: WetShip, centre: Centre, heel: number): number {
  return waterMoment(ship, heel) - weightMoment(ship.lightVolume, centre, heel);
}

type Direction = 'across' | 'along';

/** Inertia of the free surface about its own middle plus the height moment, m4 and m5. */
function stiffness(solid: Solid, volume: number, sum: Wetted, direction: Direction): number {
  fillLevel(solid, UPRIGHT, volume, sum);
  const [second, first] = direction === 'across' ? [sum.auu, sum.au] : [sum.axx, sum.ax];
  const free = sum.area > 0 ? second - (first * first) / sum.area : 0;
  return free + sum.mw;
}

function gm(ship: WetShip, kg: number, direction: Direction): number {
  const sum = dry();
  let total = stiffness(ship.hull, displacedVolume(ship), sum, direction);
  ship.volumes.forEach((volume, i) => {
    if (volume > 0) total -= stiffness(at(ship.spaces, i), volume, sum, direction);
  });
  return total / ship.lightVolume - kg;
}

/**
 * Small-angle GM upright with water aboard, m, referred to the light displacement: the inertia and height terms
 * of the same sums the righting moment uses.
 */
export function gmUpright(ship: WetShip, kg: number): number {
  return gm(ship, kg, 'across');
}

/** The same along the ship: below zero, even keel is unstable and she goes down by one end. */
export function gmLengthwise(ship: WetShip, kg: number): number {
  return gm(ship, kg, 'along');
}

/**
 * Small-angle GM with the deck just under, m, referred to the light displacement: the waterplane has shrunk to the
 * footprint of what stands above the deck, and the hull below it is wholly immersed.
 * @param footprint inertia of that footprint about the centreline, m4.
 */
export function gmDeckUnder(ship: WetShip, kg: number, footprint: number): number {
  const sum = dry();
  fillLevel(ship.hull, UPRIGHT, ship.hull.capacity, sum);
  let total = sum.mw + footprint;
  ship.volumes.forEach((volume, i) => {
    if (volume > 0) total -= stiffness(at(ship.spaces, i), volume, sum, 'across');
  });
  return total / ship.lightVolume - kg;
}
