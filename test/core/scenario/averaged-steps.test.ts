import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averagedSteps, type Changed } from '../../../core/scenario';

const NAMES = ['scope', 'quantity', 'duration', 'price', 'risk', 'place', 'season', 'crew'];

/** Groups and an amount for each set of them changed. */
const games = fc.integer({ min: 1, max: 6 }).chain(count =>
  fc.record({
    keys: fc.shuffledSubarray(NAMES, { minLength: count, maxLength: count }),
    amounts: fc.array(fc.integer({ min: -900_000_000, max: 900_000_000 }), {
      minLength: 2 ** count,
      maxLength: 2 ** count,
    }),
  }),
);

/** The amount of a set, told by names so that it does not depend on positions. */
function reader(keys: readonly string[], amounts: readonly number[], order: readonly string[] = keys) {
  return (changed: Changed) => {
    const names = new Set([...changed].map(i => order[i]));
    const place = keys.reduce((sum, key, i) => sum + (names.has(key) ? 2 ** i : 0), 0);
    return amounts[place] ?? Number.NaN;
  };
}

/** The exact mean over every order, by walking them all: the definition, not the formula. */
function byWalkingAllOrders(count: number, at: (changed: Changed) => number): number[] {
  const sums = new Array<number>(count).fill(0);
  let orders = 0;
  const walk = (changed: number[]) => {
    if (changed.length === count) {
      orders += 1;
      changed.forEach((group, i) => {
        const before = at(new Set(changed.slice(0, i)));
        sums[group] = (sums[group] ?? 0) + at(new Set(changed.slice(0, i + 1))) - before;
      });
      return;
    }
    for (let group = 0; group < count; group++) if (!changed.includes(group)) walk([...changed, group]);
  };
  walk([]);
  return sums.map(sum => sum / orders);
}

describe('steps between two totals', () => {
  test('add up to the difference to the cent, for 1,000 random pairs', () => {
    fc.assert(
      fc.property(games, ({ keys, amounts }) => {
        const steps = averagedSteps(keys, reader(keys, amounts));
        const sum = steps.reduce((a, b) => a + b, 0);
        expect(sum).toBe((amounts.at(-1) ?? 0) - (amounts[0] ?? 0));
      }),
      { numRuns: 1000 },
    );
  });

  test('turn their signs when the two are swapped', () => {
    fc.assert(
      fc.property(games, ({ keys, amounts }) => {
        const there = averagedSteps(keys, reader(keys, amounts));
        const back = averagedSteps(keys, reader(keys, [...amounts].reverse()));
        expect(back.map(step => step + 0)).toEqual(there.map(step => 0 - step));
      }),
      { numRuns: 1000 },
    );
  });

  test('do not depend on the order in which the groups are named', () => {
    fc.assert(
      fc.property(
        games.chain(game =>
          fc.record({
            game: fc.constant(game),
            order: fc.shuffledSubarray(game.keys, {
              minLength: game.keys.length,
              maxLength: game.keys.length,
            }),
          }),
        ),
        ({ game: { keys, amounts }, order }) => {
          const first = averagedSteps(keys, reader(keys, amounts));
          const second = averagedSteps(order, reader(keys, amounts, order));
          expect(order.map(key => first[keys.indexOf(key)])).toEqual(second);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('are within a cent of the mean over all orders, walked one by one', () => {
    fc.assert(
      fc.property(games, ({ keys, amounts }) => {
        const at = reader(keys, amounts);
        const steps = averagedSteps(keys, at);
        byWalkingAllOrders(keys.length, at).forEach((mean, i) => {
          expect(Math.abs((steps[i] ?? Number.NaN) - mean)).toBeLessThan(1.000001);
        });
      }),
      { numRuns: 100 },
    );
  });

  test('agree with the glove game: whoever holds the only left glove gets two thirds', () => {
    // L. S. Shapley's value of the three-player glove market is 2/3, 1/6, 1/6 (any text on cooperative games).
    const worth = (changed: Changed) => (changed.has(0) && (changed.has(1) || changed.has(2)) ? 600 : 0);
    expect(averagedSteps(['left', 'right', 'second right'], worth)).toEqual([400, 100, 100]);
  });

  test('eight groups are the most', () => {
    expect(averagedSteps(NAMES, changed => changed.size * 100)).toEqual(NAMES.map(() => 100));
    expect(() => averagedSteps([...NAMES, 'ninth'], () => 0)).toThrow('at most 8');
  });
});
