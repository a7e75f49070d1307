import type { UprightCompartment, UprightInput } from '../../../core/flooding';

const space = (change: Partial<UprightCompartment>): UprightCompartment => {
  const still = { id: 'space', title: 'Space', x0: 0, x1: 10, y0: -10, y1: 10, z0: 0, z1: 10 };
  return { ...still, permeability: 0.9, openings: [], vents: [], connections: [], ...change };
};

/** The barge of 100 x 20 x 10 m and 4,100 t as one hold open over its whole length, holes in the floor. */
export function bargeInput(kg: number, change: Partial<UprightInput> = {}): UprightInput {
  return {
    particulars: { length: 100, breadth: 20, depth: 10, lightDraught: 2 },
    displacement: { low: 4100, likely: 4100, high: 4100 },
    kg: { low: kg, likely: kg, high: kg, basis: 'inclined' },
    compartments: [
      space({
        id: 'hold',
        title: 'Hold',
        x0: 0,
        x1: 100,
        permeability: 1,
        openings: [{ id: 'floor', side: 'bottom', area: 1, z: 0, height: 0, count: 10 }],
        vents: [{ area: 4, z: 12 }],
      }),
    ],
    removedWeights: [],
    method: 'flooding',
    targetSinkTime: 430,
    openingsMismatch: 0,
    ...change,
  };
}

/** An invented coaster of 80 m: five holds and rooms side to side, wing tanks, an assumed KG with its range. */
export function coasterInput(change: Partial<UprightInput> = {}): UprightInput {
  const across = [0, 16, 32, 48, 64].map((x, i) =>
    space({
      id: `room-${i + 1}`,
      title: `Room ${i + 1}`,
      x0: x,
      x1: x + 16,
      y0: -4,
      y1: 4,
      z0: 1,
      z1: 8,
      floods: true,
    }),
  );
  const wings = (['port', 'starboard'] as const).flatMap(side =>
    [16, 48].map((x, i) =>
      space({
        id: `wing-${side}-${i + 1}`,
        title: `Wing ${side} ${i + 1}`,
        x0: x,
        x1: x + 16,
        y0: side === 'port' ? -6.5 : 4,
        y1: side === 'port' ? -4 : 6.5,
        z0: 1,
        z1: 8,
        floods: true,
      }),
    ),
  );
  return {
    particulars: { length: 80, breadth: 13, depth: 8, lightDraught: 3 },
    displacement: { low: 1950, likely: 2000, high: 2100 },
    kg: { low: 4.6, likely: 5, high: 5.4, basis: 'assumed' },
    compartments: [...across, ...wings],
    removedWeights: [{ mass: 60, vcg: 12, lcg: 20, tcg: 0 }],
    method: 'flooding',
    targetSinkTime: 1800,
    site: {
      waterDepth: 30,
      highestPoint: 14,
      permitClearance: 15,
      bottomSlope: 0.01,
      wave: { height: 6, period: 10 },
    },
    ...change,
  };
}
