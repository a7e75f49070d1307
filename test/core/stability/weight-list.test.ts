import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { kgAfterRemoval, weightTotals, type WeightItem } from '../../../core/stability';

const provenance = { basis: 'surveyed', source: 'Weighed on the crane', year: 2025 } as const;
const item = (change: Partial<WeightItem>): WeightItem => {
  const still = { title: 'Hull', mass: 1000, vcg: 4, lcg: 50, tcg: 0 };
  return { ...still, massSpread: 0, vcgSpread: 0, provenance, ...change };
};

describe('a weight list', () => {
  it('gives mass, KG and centres at its foot', () => {
    const totals = weightTotals([item({}), item({ title: 'House', mass: 250, vcg: 14, lcg: 20, tcg: 0.5 })]);
    expect(totals).toMatchObject({ mass: { likely: 1250 }, kg: { likely: 6 }, lcg: 44, tcg: 0.1 });
  });

  it('gives the range of KG by the law of propagation of uncertainty (GUM 5.1.2)', () => {
    // Two items of 100 t at 2 and 8 m: KG 5; 10 % of one mass moves KG by 10 * 3 / 200 = 0.15 m, a height error of
    // 0.4 m by 0.2 m: root of (0.15^2 + 0.15^2 + 0.2^2 + 0.2^2) = 0.35355.
    const pair = [2, 8].map(vcg => item({ mass: 100, vcg, massSpread: 0.1, vcgSpread: 0.4 }));
    const totals = weightTotals(pair);
    expect('kg' in totals ? totals.kg.high - totals.kg.likely : 0).toBeCloseTo(0.353553, 6);
  });

  it('agrees with removing an item by the formula of KG after removal', () => {
    const masses = fc.double({ min: 1, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(masses, masses, fc.double({ min: 0, max: 30, noNaN: true }), (a, b, height) => {
        const both = weightTotals([item({ mass: a }), item({ mass: b, vcg: height })]);
        const kg = 'kg' in both ? both.kg.likely : Number.NaN;
        expect(kgAfterRemoval(a + b, kg, b, height)).toBeCloseTo(4, 5);
      }),
    );
  });

  it('withholds KG when an item cannot be right, and says which', () => {
    const totals = weightTotals([item({}), item({ mass: -5 })]);
    expect('kg' in totals).toBe(false);
    expect(totals.findings.map(({ place }) => place)).toEqual(['/weights/1']);
  });

  it('leaves out the centre along the ship when an item does not have it', () => {
    const { lcg: _, ...bare } = item({});
    expect('lcg' in weightTotals([item({}), bare])).toBe(false);
  });
});
