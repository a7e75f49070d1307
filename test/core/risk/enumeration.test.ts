import { describe, expect, it } from 'vitest';
import { simulate, type Distribution, type RiskDriver } from '../../../core/risk';
import { prepare, type SmallProject } from './small-project';

const SEEDS = [1, 2, 3, 4];
const TRIALS = SEEDS.length * 100_000;
/** Two-sided normal value that all of about fifty shares keep within together in 99 runs of 100 (Bonferroni). */
const ALL_WITHIN = 3.72;

const discrete = (values: number[], probabilities: number[]): Distribution => ({
  kind: 'discrete',
  values,
  probabilities,
});

const rangeOf = {
  first: discrete([100, 130, 200], [0.5, 0.3, 0.2]),
  second: discrete([40, 90], [0.6, 0.4]),
  clean: discrete([10, 14], [0.7, 0.3]),
  permits: discrete([8, 12, 20], [0.2, 0.5, 0.3]),
};

const weather: RiskDriver = {
  id: 'market',
  title: 'Market',
  probability: 0.35,
  factor: discrete([1.5, 2], [0.6, 0.4]),
  inputs: ['first', 'clean'],
};

function project(drivers: readonly RiskDriver[]): SmallProject {
  return {
    ranges: rangeOf,
    drivers,
    activities: { clean: { days: read => read('clean') }, permits: { days: read => read('permits') } },
    lines: { first: read => read('first'), second: (read, finish) => read('second') + 10 * finish },
  };
}

/** Outcomes of a discrete range with their probabilities. */
function outcomes(d: Distribution): [number, number][] {
  return d.kind === 'discrete' ? d.values.map((v, i) => [v, d.probabilities[i] ?? Number.NaN]) : [];
}

/** The joint distribution of cost and finish, every combination counted. */
function enumerate(factors: readonly [number, number][]): Map<string, number> {
  const joint = new Map<string, number>();
  for (const [f, pf] of factors)
    for (const [a, pa] of outcomes(rangeOf.first))
      for (const [b, pb] of outcomes(rangeOf.second))
        for (const [c, pc] of outcomes(rangeOf.clean))
          for (const [d, pd] of outcomes(rangeOf.permits)) {
            const finish = Math.max(c * f, d);
            const key = `${(a * f + b + 10 * finish).toFixed(2)} ${finish.toFixed(2)}`;
            joint.set(key, (joint.get(key) ?? 0) + pf * pa * pb * pc * pd);
          }
  return joint;
}

describe('a project of two lines and two activities with discrete ranges, counted in full', () => {
  it.each([
    ['without a driver', [], [[1, 1]]],
    [
      'with a driver shared by a line and an activity',
      [weather],
      [
        [1, 0.65],
        [1.5, 0.35 * 0.6],
        [2, 0.35 * 0.4],
      ],
    ],
  ] as [string, RiskDriver[], [number, number][]][])(
    '%s, is met in every probability within its interval',
    (_, drivers, factors) => {
      const exact = enumerate(factors);
      expect([...exact.values()].reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      const found = new Map<string, number>();
      for (const seed of SEEDS) {
        const run = simulate(prepare(project(drivers)), { trials: 100_000, seed, ranksDrivers: false });
        run?.samples.total.forEach((total, t) => {
          const key = `${total.toFixed(2)} ${(run.samples.finish[t] ?? Number.NaN).toFixed(2)}`;
          found.set(key, (found.get(key) ?? 0) + 1 / TRIALS);
        });
      }
      expect([...found.keys()].filter(key => !exact.has(key))).toEqual([]);
      for (const [key, p] of exact) {
        const half = ALL_WITHIN * Math.sqrt((p * (1 - p)) / TRIALS);
        expect([key, Math.abs((found.get(key) ?? 0) - p) <= half]).toEqual([key, true]);
      }
    },
  );
});
