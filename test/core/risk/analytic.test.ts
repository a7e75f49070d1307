import { describe, expect, it } from 'vitest';
import {
  intervalRanks,
  orderStatistic,
  simulate,
  sorted,
  type Distribution,
  type PreparedRun,
} from '../../../core/risk';
import { prepare } from './small-project';

/** Two-sided 99 % of the standard normal: many checks stand side by side, so 95 % would miss one in twenty. */
const WITHIN = 2.576;

const TRIALS = 100_000;
const tri: Distribution = { kind: 'triangular', low: 10, likely: 20, high: 50 };

function run(prepared: PreparedRun) {
  const result = simulate(prepared, { trials: TRIALS, seed: 20240117, ranksDrivers: false });
  if (result === undefined) throw new Error('the run was not asked to stop');
  return result;
}

/** Whether a mean of so many plain draws would lie within WITHIN standard errors. */
function expectMean(found: number, exact: number, variance: number): void {
  expect(Math.abs(found - exact)).toBeLessThan(WITHIN * Math.sqrt(variance / TRIALS));
}

/** Variance within WITHIN standard errors; `kurtosis` is the fourth central moment over the variance squared. */
function expectVariance(found: number, exact: number, kurtosis = 3): void {
  expect(Math.abs(found - exact)).toBeLessThan(WITHIN * exact * Math.sqrt((kurtosis - 1) / TRIALS));
}

function ten(shape: Distribution): Record<string, Distribution> {
  return Object.fromEntries(Array.from({ length: 10 }, (_, i) => [`x${i}`, shape]));
}

const sumOfTen = (read: (id: string) => number) =>
  Array.from({ length: 10 }, (_, i) => read(`x${i}`)).reduce((a, b) => a + b, 0);

describe('a single range', () => {
  it('triangular (10, 20, 50) gives mean 26.6667, variance 72.2222 and its closed-form percentiles', () => {
    const { cost, samples } = run(prepare({ ranges: { x: tri }, lines: { only: read => read('x') } }));
    expectMean(cost.mean, 26.6667, 72.2222);
    expectVariance(cost.standardDeviation ** 2, 72.2222);
    const rising = sorted(samples.total);
    for (const [q, exact] of [
      [0.1, 16.3246],
      [0.5, 25.5051],
      [0.8, 34.5081],
    ] as const) {
      const ranks = intervalRanks(TRIALS, q);
      expect(exact).toBeGreaterThan(rising[ranks.low - 1] ?? Infinity);
      expect(exact).toBeLessThan(rising[ranks.high - 1] ?? -Infinity);
    }
  });

  it('PERT (10, 20, 50) gives mean 23.3333 and the exact variance 50.7937', () => {
    const { cost } = run(
      prepare({ ranges: { x: { ...tri, kind: 'pert' } }, lines: { only: read => read('x') } }),
    );
    expectMean(cost.mean, 23.3333, 50.7937);
    expectVariance(cost.standardDeviation ** 2, 50.7937);
  });
});

describe('the sum of ten triangular (10, 20, 50)', () => {
  it('has the standard deviation 26.874 when independent', () => {
    const { cost } = run(prepare({ ranges: ten(tri), lines: { only: sumOfTen } }));
    expectMean(cost.mean, 266.667, 722.222);
    expectVariance(cost.standardDeviation ** 2, 722.222);
  });

  it('has the standard deviation 84.984 when one driver moves all ten alike', () => {
    const one: Distribution = { kind: 'certain', value: 1 };
    const { cost } = run(
      prepare({
        ranges: ten(one),
        drivers: [{ id: 'd', title: 'All', probability: 1, factor: tri, inputs: Object.keys(ten(one)) }],
        lines: { only: sumOfTen },
      }),
    );
    expectMean(cost.mean, 266.667, 7222.22);
    expectVariance(cost.standardDeviation ** 2, 7222.22);
  });

  it('has the standard deviation 51.694 at the common correlation 0.3 of the values', () => {
    const ids = Object.keys(ten(tri));
    const correlations = ids.flatMap((first, i) =>
      ids.slice(i + 1).map(second => ({ first, second, correlation: 0.3, of: 'values' as const })),
    );
    const { cost } = run(prepare({ ranges: ten(tri), correlations, lines: { only: sumOfTen } }));
    expectMean(cost.mean, 266.667, 51.694 ** 2);
    expectVariance(cost.standardDeviation ** 2, 51.694 ** 2);
  });
});

describe('the greatest of parallel activities', () => {
  const parallel = (shape: Distribution, count: number) => {
    const ids = Array.from({ length: count }, (_, i) => `x${i}`);
    return run(
      prepare({
        ranges: Object.fromEntries(ids.map(id => [id, shape])),
        activities: Object.fromEntries(
          ids.map(id => [id, { days: (read: (id: string) => number) => read(id) }]),
        ),
      }),
    ).finish;
  };

  it.each([2, 3, 5])('of %d uniform (0, 1) has the mean n / (n + 1)', n => {
    const exact = n / (n + 1);
    expectMean(parallel({ kind: 'uniform', low: 0, high: 1 }, n).mean, exact, n / ((n + 1) ** 2 * (n + 2)));
  });

  it('of two and three standard normal has the means 0.56419 and 0.84628, and the variance 0.68169 for two', () => {
    // Shifted by 100 because a duration is not negative.
    const shape: Distribution = { kind: 'normal', mean: 100, standardDeviation: 1 };
    const two = parallel(shape, 2);
    expectMean(two.mean - 100, 0.56419, 0.68169);
    expectVariance(two.standardDeviation ** 2, 0.68169, 3.1);
    expectMean(parallel(shape, 3).mean - 100, 0.84628, 0.5595);
  });

  it('of two and three triangular (0, 5, 10) has the means 6.16667 and 6.75, and the variance 2.80556 for two', () => {
    const shape: Distribution = { kind: 'triangular', low: 0, likely: 5, high: 10 };
    const two = parallel(shape, 2);
    expectMean(two.mean, 6.16667, 2.80556);
    expectVariance(two.standardDeviation ** 2, 2.80556);
    expectMean(parallel(shape, 3).mean, 6.75, 2.1);
  });

  it('of N(10, 2) and N(9, 3) has the mean 10.9934 and the variance 3.9736', () => {
    // C. E. Clark, Operations Research 9 (1961) 145-162; exact for two normals.
    const { finish } = run(
      prepare({
        ranges: {
          a: { kind: 'normal', mean: 110, standardDeviation: 2 },
          b: { kind: 'normal', mean: 109, standardDeviation: 3 },
        },
        activities: { a: { days: read => read('a') }, b: { days: read => read('b') } },
      }),
    );
    expectMean(finish.mean - 100, 10.9934, 3.9736);
    expectVariance(finish.standardDeviation ** 2, 3.9736, 3.4);
  });
});

it('an event of probability 0.4 costing triangular (10, 20, 50) has the mean 10.6667 and the variance 199.556', () => {
  const { cost } = run(
    prepare({
      ranges: {},
      events: [
        { id: 'e', title: 'E', probability: 0.4, costs: [{ line: 'only', dollars: tri }], delays: [] },
      ],
    }),
  );
  expectMean(cost.mean, 10.6667, 199.556);
  expectVariance(cost.standardDeviation ** 2, 199.556, 2.5);
});

it('the later of N(10, 2) and N(9, 3) with the correlation 0.5 has the mean 10.6300 and the variance 4.7367', () => {
  // C. E. Clark, Operations Research 9 (1961) 145-162, with a = sqrt(4 + 9 - 6); exact for two normals.
  const { finish } = run(
    prepare({
      ranges: {
        a: { kind: 'normal', mean: 110, standardDeviation: 2 },
        b: { kind: 'normal', mean: 109, standardDeviation: 3 },
      },
      correlations: [{ first: 'a', second: 'b', correlation: 0.5 }],
      activities: { a: { days: read => read('a') }, b: { days: read => read('b') } },
    }),
  );
  expectMean(finish.mean - 100, 10.63001, 4.736719);
  expectVariance(finish.standardDeviation ** 2, 4.736719, 3.4);
});

it('the sum of twelve uniform (0, 1) has the mean 6 and the variance 1', () => {
  const ids = Array.from({ length: 12 }, (_, i) => `u${i}`);
  const { cost } = run(
    prepare({
      ranges: Object.fromEntries(ids.map(id => [id, { kind: 'uniform' as const, low: 0, high: 1 }])),
      lines: { only: read => ids.reduce((sum, id) => sum + read(id), 0) },
    }),
  );
  expectMean(cost.mean, 6, 1);
  // The kurtosis of a sum of n uniform ones is 3 - 6 / (5 n).
  expectVariance(cost.standardDeviation ** 2, 1, 2.9);
});

it('the product of two lognormals is the lognormal of both: mean 4.78267 and variance 3.17556', () => {
  const { cost } = run(
    prepare({
      ranges: {
        a: { kind: 'lognormal', logMean: 1, logStandardDeviation: 0.2 },
        b: { kind: 'lognormal', logMean: 0.5, logStandardDeviation: 0.3 },
      },
      lines: { only: read => read('a') * read('b') },
    }),
  );
  expectMean(cost.mean, 4.782675, 3.175558);
  expectVariance(cost.standardDeviation ** 2, 3.175558, 5.5268);
});

it('a driver of probability 0.4 and triangular (1, 1.2, 1.6) lifts triangular (10, 20, 50) to 29.5111, variance 106.694', () => {
  // Mean and second moment of a product of independent factors are the products of theirs.
  const { cost } = run(
    prepare({
      ranges: { x: tri },
      drivers: [
        {
          id: 'd',
          title: 'D',
          probability: 0.4,
          factor: { kind: 'triangular', low: 1, likely: 1.2, high: 1.6 },
          inputs: ['x'],
          note: 'n',
        },
      ],
      lines: { only: read => read('x') },
    }),
  );
  expectMean(cost.mean, 29.511111, 106.694321);
  expectVariance(cost.standardDeviation ** 2, 106.694321, 3.2);
});

describe('rank correlation', () => {
  it.each([0.3, -0.6, 0.9])(
    'asked for at %d in normal scores gives the rank correlation (6/pi) asin(r/2)',
    r => {
      const { samples } = run(
        prepare({
          ranges: { a: tri, b: { kind: 'uniform', low: 0, high: 1 } },
          correlations: [{ first: 'a', second: 'b', correlation: r }],
          activities: { b: { days: read => read('b') } },
          lines: { a: read => read('a') },
        }),
      );
      const exact = (6 / Math.PI) * Math.asin(r / 2);
      // The scores are matched in every chunk, so the spread is far below that of plain draws, 1 / sqrt(n).
      expect(Math.abs(spearman(samples.total, samples.finish) - exact)).toBeLessThan(
        WITHIN / Math.sqrt(TRIALS),
      );
    },
  );
});

it('asked for at 0.5 of the ranks themselves gives that rank correlation', () => {
  const { samples } = run(
    prepare({
      ranges: { a: tri, b: { kind: 'pert', low: 0, likely: 3, high: 4 } },
      correlations: [{ first: 'a', second: 'b', correlation: 0.5, of: 'ranks' }],
      activities: { b: { days: read => read('b') } },
      lines: { a: read => read('a') },
    }),
  );
  expect(Math.abs(spearman(samples.total, samples.finish) - 0.5)).toBeLessThan(WITHIN / Math.sqrt(TRIALS));
});

function spearman(a: Float64Array, b: Float64Array): number {
  const ranks = (x: Float64Array) => {
    const order = Array.from(x.keys()).sort((i, j) => (x[i] ?? 0) - (x[j] ?? 0));
    const out = new Float64Array(x.length);
    order.forEach((trial, rank) => (out[trial] = rank));
    return out;
  };
  const [ra, rb] = [ranks(a), ranks(b)];
  const squares = ra.reduce((sum, x, i) => sum + (x - (rb[i] ?? 0)) ** 2, 0);
  return 1 - (6 * squares) / (a.length * (a.length ** 2 - 1));
}

it('the ranks of a percentile interval are N q -+ 1.96 sqrt(N q (1 - q)), rounded outwards', () => {
  // W. J. Conover, Practical Nonparametric Statistics, section 3.2, worked out for P80.
  expect([1000, 5000, 10_000, 100_000].map(n => intervalRanks(n, 0.8))).toEqual([
    { low: 775, high: 825 },
    { low: 3944, high: 4056 },
    { low: 7921, high: 8079 },
    { low: 79752, high: 80248 },
  ]);
  expect(orderStatistic(Float64Array.of(1, 2, 3, 4, 5), 0.8)).toBe(4);
});
