import { at, type Finding } from '../../base';
import { gmLengthwise } from '../../stability';
import type { SimulationResult } from '../simulate/ship';
import type { ScreenCase } from './cases';
import type { ResolvedShip } from './resolved';
import type { UprightCompartment } from './types';

/** Least vent area as a share of the openings before a finding. @source Ten per cent rule halved, judgement. */
const LEAST_VENT = 0.05;

function areaOf(c: UprightCompartment): number {
  return c.openings.reduce((sum, { area, count }) => sum + area * count, 0);
}

function ventFinding(c: UprightCompartment, place: string): Finding[] {
  const openings = areaOf(c);
  const vents = c.vents.reduce((sum, { area }) => sum + area, 0);
  if (vents >= LEAST_VENT * openings) return [];
  return [
    {
      code: 'upright/air-trapped',
      weight: 'warns',
      place: `${place}/vents`,
      message: `${c.title} has ${openings.toFixed(2)} m2 of openings and ${vents.toFixed(2)} m2 of air escapes.`,
      meaning: 'Air that cannot leave keeps buoyancy low or on one side, and holds her up.',
      remedy: 'Add air escapes of at least a tenth of the opening area at the highest points, on both sides.',
    },
  ];
}

function endFindings(ship: ResolvedShip, run: SimulationResult): Finding[] {
  return run.trappedAir.map(({ room, share }) => {
    const c = at(ship.spaces, room).compartment;
    return {
      code: 'upright/air-left',
      weight: 'warns',
      place: `/compartments/${ship.input.compartments.indexOf(c)}`,
      message: `At the end of the simulation ${Math.round(share * 100)} % of ${c.title} is still air.`,
      meaning: 'Buoyancy that stays below the centre of gravity turns her over once she is under.',
      remedy: 'Give it an air escape at its highest point, or flood it earlier.',
    };
  });
}

function tightLow(ship: ResolvedShip, kg: number): Finding[] {
  return ship.input.compartments.flatMap((c, i): Finding[] =>
    c.floods === false && (c.z0 + c.z1) / 2 < kg
      ? [
          {
            code: 'upright/tight-low',
            weight: 'warns',
            place: `/compartments/${i}`,
            message: `${c.title} stays tight and lies below the centre of gravity.`,
            meaning: 'Once the deck is under, buoyancy low in the ship turns her over.',
            remedy: 'Let it flood late, or press it full before the sinking.',
          },
        ]
      : [],
  );
}

/** Whether at some flood level a free surface along the ship leaves even keel unstable. */
function undivided(likely: ScreenCase): Finding[] {
  const at = likely.path.levels.find(({ ship }) => gmLengthwise(ship, likely.kg) < 0);
  if (!at) return [];
  return [
    {
      code: 'upright/undivided-length',
      weight: 'warns',
      place: '/compartments',
      message: `At a flood level of ${at.state.level.toFixed(2)} m the water runs free along so much of her length that even keel is unstable.`,
      meaning: 'She goes down by one end, and which one is chance; the section check does not see it.',
      remedy: 'Keep bulkheads across the ship, or flood the middle before the ends.',
    },
  ];
}

/** Findings about compartments: air that cannot leave, air that did not, tight spaces low, water free lengthwise. */
export function spaceFindings(ship: ResolvedShip, run: SimulationResult, likely: ScreenCase): Finding[] {
  const vents = ship.input.compartments.flatMap((c, i) => ventFinding(c, `/compartments/${i}`));
  return [...vents, ...endFindings(ship, run), ...tightLow(ship, likely.kg), ...undivided(likely)];
}
