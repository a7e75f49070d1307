import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocateCents, dollars, firstDollars, shareOf, sumCents } from '../../../core/cash-flow';

describe('splitting cents', () => {
  it('allocate adds up to the total to the cent and no part is a cent or more off its quota', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1e12, max: 1e12 }),
        fc.array(fc.integer({ min: 0, max: 1e12 }), { minLength: 1, maxLength: 40 }),
        (total, weights) => {
          fc.pre(sumCents(weights) > 0);
          const parts = allocateCents(total, weights);
          expect(sumCents(parts)).toBe(total);
          const all = sumCents(weights);
          parts.forEach((part, i) =>
            expect(Math.abs(part - (total * (weights[i] ?? 0)) / all)).toBeLessThan(1.001),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  // Hamilton's method, worked by hand: quotas 1.43, 2.86, 5.71 of 10; the two left over go to 2.86 and 5.71.
  it('allocate gives the cents left over to the largest remainders', () => {
    expect(allocateCents(10, [1, 2, 4])).toEqual([1, 3, 6]);
    expect(allocateCents(100, [1, 1, 1])).toEqual([34, 33, 33]);
  });

  it('allocate never gives a part more than its weight when the total is not above their sum', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (w, p) => {
          const sum = sumCents(w);
          fc.pre(sum > 0);
          allocateCents(Math.floor(sum * p), w).forEach((part, i) =>
            expect(part).toBeLessThanOrEqual(w[i] ?? 0),
          );
        },
      ),
    );
  });

  it('allocate with nothing to split by is a fault, and nothing split over nothing is nothing', () => {
    expect(() => allocateCents(1, [0, 0])).toThrow('nothing to split');
    expect(allocateCents(0, [0, 0])).toEqual([0, 0]);
  });

  it('part of a cent is a fault of the program, in a sum and in a share', () => {
    expect(() => sumCents([100, 0.5])).toThrow('not whole cents');
    expect(() => shareOf(0.5, 0.1)).toThrow('not whole cents');
  });

  it('a share is rounded once, half away from zero', () => {
    expect(shareOf(50, 0.15)).toBe(8);
    expect(shareOf(-50, 0.15)).toBe(-8);
    expect(shareOf(115, 0.3)).toBe(35);
    expect(shareOf(1_405_000_00, 0.15)).toBe(210_750_00);
  });

  it('an amount printed is the amount read back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), amount => {
        expect(firstDollars(`the sum of ${dollars(amount)} is paid`)).toBe(amount);
      }),
    );
    expect(dollars(123_456_789)).toBe('$1,234,567.89');
    expect(firstDollars('no amount')).toBeUndefined();
  });
});
