import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../core/base';
import {
  sizeCrossFlooding,
  uprightScreen,
  type UprightCompartment,
  type UprightInput,
} from '../../../core/flooding';

interface Corridor {
  readonly width: number;
  readonly kg: number;
  readonly opening: number;
  /** Openings of the corridor for one of a room. */
  readonly corridorOpenings: number;
  readonly height: number;
  readonly side: 1 | -1;
  readonly permeability: number;
}

/** Corridor on one side over 60 m, 12 rooms on the other, doors closed, one equal opening to the sea each. */
function corridorShip(c: Corridor): UprightInput {
  const mirrored = (y0: number, y1: number): { y0: number; y1: number } =>
    c.side > 0 ? { y0, y1 } : { y0: -y1, y1: -y0 };
  const [shell, far] = c.side > 0 ? (['starboard', 'port'] as const) : (['port', 'starboard'] as const);
  const sea = (side: 'port' | 'starboard', count: number): UprightCompartment['openings'] => [
    { id: 'sea', side, area: c.opening, z: 0.8, height: 0.8, count },
  ];
  const shared = { z0: 0, z1: c.height, permeability: c.permeability, vents: [{ area: 1, z: 12 }] };
  const rooms = Array.from({ length: 12 }, (_, i): UprightCompartment => ({
    id: `room-${i + 1}`,
    title: `Room ${i + 1}`,
    x0: 20 + 5 * i,
    x1: 25 + 5 * i,
    ...mirrored(-10, 10 - c.width),
    ...shared,
    openings: sea(far, 1),
    connections: [{ to: 'corridor', area: 1.6, z: 1.2, kind: 'door', closed: true }],
  }));
  const corridor: UprightCompartment = {
    id: 'corridor',
    title: 'Corridor',
    x0: 20,
    x1: 80,
    ...mirrored(10 - c.width, 10),
    ...shared,
    openings: sea(shell, c.corridorOpenings),
    connections: [],
  };
  return {
    particulars: { length: 100, breadth: 20, depth: 10, lightDraught: 2 },
    displacement: { low: 4100, likely: 4100, high: 4100 },
    kg: { low: c.kg, likely: c.kg, high: c.kg, basis: 'inclined' },
    compartments: [corridor, ...rooms],
    removedWeights: [],
    openingsMismatch: 0,
    method: 'flooding',
    targetSinkTime: 900,
  };
}

const base: Corridor = {
  width: 3,
  kg: 6,
  opening: 0.5,
  corridorOpenings: 12,
  height: 10,
  side: 1,
  permeability: 0.95,
};

function holds(input: UprightInput): void {
  const crossing = sizeCrossFlooding(input);
  expect(crossing.peakBefore).toBeGreaterThan(1);
  if (crossing.limit) {
    expect(['structure', 'deck edge', 'number of cuts', 'stability']).toContain(crossing.limit.kind);
    expect(crossing.removedShare).toBeLessThan(0.9);
  } else expect(crossing.removedShare).toBeGreaterThanOrEqual(0.9);
}

describe('a corridor on one side against twelve rooms on the other', () => {
  it('lists while it floods, and sized cuts remove nine tenths of the peak list', () => {
    const crossing = sizeCrossFlooding(corridorShip(base));
    expect(crossing.peakBefore).toBeGreaterThan(1);
    expect(crossing.limit).toBeUndefined();
    expect(crossing.removedShare).toBeGreaterThanOrEqual(0.9);
    expect(crossing.cuts.length).toBe(12);
  });

  it('is part of what the screen says', () => {
    const { crossFlooding, whatIfs } = uprightScreen(corridorShip(base));
    expect(crossFlooding?.removedShare).toBeGreaterThanOrEqual(0.9);
    expect(whatIfs.some(({ title }) => title.includes('forgotten open'))).toBe(true);
  });

  it('lists to the other side by the same angle when mirrored', () => {
    const [one, other] = [
      sizeCrossFlooding(corridorShip(base)),
      sizeCrossFlooding(corridorShip({ ...base, side: -1 })),
    ];
    expect(other.peakBefore).toBeCloseTo(one.peakBefore, 6);
  });

  it('says which limit stopped it when few cuts can be made', () => {
    const limits = { shareOfBulkhead: 0.2, cuts: 13, wanted: 0.9 };
    const crossing = sizeCrossFlooding(corridorShip({ ...base, opening: 3 }), limits);
    expect(crossing.limit?.kind).toBe('number of cuts');
  });

  const draw = randomStream(7, 'corridor variants');
  const between = (low: number, high: number): number => low + (high - low) * draw();
  const variants = Array.from({ length: 20 }, (_, i): [number, Corridor] => [
    i + 1,
    {
      width: between(1.5, 6),
      kg: between(3, 6.5),
      opening: between(0.1, 1),
      corridorOpenings: Math.round(between(6, 14)),
      height: between(5, 10),
      side: draw() < 0.5 ? 1 : -1,
      permeability: between(0.6, 0.98),
    },
  ]);
  it.each(variants)('random variant %s: nine tenths go, or the limit is named', (_, variant) =>
    holds(corridorShip(variant)),
  );
});
