import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { exclusionUnits } from '../../../core/scheduling/search/exclusion-units';
import { LastingOrders } from '../../../core/scheduling/search/ordered';
import type { SearchProblem } from '../../../core/scheduling/search';

const COUNT = 9;

/** Activities of one day, some of which follow each other. */
function problemOf(pairs: readonly (readonly [number, number])[]): SearchProblem {
  return {
    horizon: COUNT,
    activities: Array.from({ length: COUNT }, () => ({ duration: 1, demands: [] })),
    resources: [],
    relationships: pairs.map(([a, b]) => ({
      from: Math.min(a, b),
      to: Math.max(a, b),
      kind: 'FS' as const,
      minimumLag: 0,
    })),
    calendars: [],
    exclusions: [],
  };
}

const activity = fc.nat(COUNT - 1);
const some = fc.uniqueArray(activity, { minLength: 1, maxLength: COUNT });
const orders = fc
  .array(fc.tuple(activity, activity), { maxLength: 8 })
  .map(pairs => problemOf(pairs.filter(([a, b]) => a !== b)))
  .map(problem => new LastingOrders(problem));

describe('exclusions as units of resources', () => {
  it('keep apart the first and the second, and let all others run at once', () => {
    fc.assert(
      fc.property(some, some, orders, some, (first, second, known, together) => {
        // Only what can be under way at once at all is asked.
        const isPossible = together.every((a, k) =>
          together.slice(k + 1).every(b => a === b || !known.isApart(a, b)),
        );
        if (!isPossible) return;
        const fits = exclusionUnits({ first, second }, known).every(({ units, centre, around }) => {
          const held = together.map(i => (centre.includes(i) ? units : around.includes(i) ? 1 : 0));
          return held.reduce<number>((a, b) => a + b, 0) <= units;
        });
        const meet = together.some(
          a => first.includes(a) && together.some(b => b !== a && second.includes(b)),
        );
        expect(fits).toBe(!meet);
      }),
      { numRuns: 3000 },
    );
  });
  it('are as few as the shorter side, and none where relationships keep all apart', () => {
    const free = new LastingOrders(problemOf([]));
    expect(exclusionUnits({ first: [0, 1], second: [2, 3, 4, 5] }, free)).toEqual([
      { units: 4, centre: [0], around: [2, 3, 4, 5] },
      { units: 4, centre: [1], around: [2, 3, 4, 5] },
    ]);
    const apart = new LastingOrders(problemOf([[0, 2]]));
    expect(exclusionUnits({ first: [0], second: [2] }, apart)).toEqual([]);
  });
});
