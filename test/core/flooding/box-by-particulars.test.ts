import { describe, expect, it } from 'vitest';
import { uprightScreen, type UprightInput } from '../../../core/flooding';

/** The box barge of 100 x 20 x 10 m and 4,100 t as a project gives it: with the waterplane coefficient of its type. */
function barge(kg: number): UprightInput {
  const one = { low: kg, likely: kg, high: kg, basis: 'inclined' } as const;
  const floor = { id: 'floor', side: 'bottom', area: 1, z: 0, height: 0, count: 10 } as const;
  return {
    particulars: { length: 100, breadth: 20, depth: 10, lightDraught: 2, waterplaneCoefficient: 0.92 },
    displacement: { low: 4100, likely: 4100, high: 4100 },
    kg: one,
    compartments: [
      {
        ...{ id: 'all', title: 'All of her', x0: 0, x1: 100, y0: -10, y1: 10, z0: 0, z1: 10 },
        permeability: 1,
        openings: [floor],
        vents: [{ area: 2, z: 10 }],
        connections: [],
      },
    ],
    removedWeights: [],
    openingsMismatch: 0,
    method: 'flooding',
  };
}

describe('a box given by its particulars', () => {
  it('is a box even where the hull type guesses a finer waterplane: GM is 1 + h - KG (Lewis, PNA 1988)', () => {
    expect(uprightScreen(barge(4.5)).lowestGmMetres).toBeCloseTo(0.01 + 1 - 4.5, 6);
  });

  it('shows at every stage the heel of the section at that level: on its side until 3 m, then upright at once', () => {
    const { stages } = uprightScreen(barge(4));
    for (const { level, heel, gm } of stages)
      if (level > 0) {
        expect(gm).toBeCloseTo(1 + level - 4, 6);
        if (level > 3) expect(heel).toBeCloseTo(0, 6);
        if (level > 0.5 && level < 2) {
          // 4.99, 9.18 and 15.27 degrees at 0.5, 1 and 2 m, by polygon clipping and by strips.
          expect(heel).toBeGreaterThan(4.99);
          expect(heel).toBeLessThan(15.27);
        }
      }
  });
});
