import { describe, expect, it } from 'vitest';
import { BugError } from '../../../core/base';
import {
  amongPastProjects,
  contingencyAt,
  COST_GROWTH,
  distributionFindings,
  distributionOf,
  drain,
  equalChanceLine,
  evenlySafe,
  isSureEnough,
  mitigationValues,
  planGap,
  quantile,
  samplerOf,
  simulate,
  type Distribution,
  type PreparedRun,
  type RegisterEvent,
  type WeatherOperation,
} from '../../../core/risk';
import { beta, betaQuantile, betaShare } from '../../../core/risk/numeric/beta';
import { normalQuantile } from '../../../core/risk/numeric/normal-quantile';
import { scoresForValues } from '../../../core/risk/score-correlation';
import { startsLate } from '../../../core/risk/weather-schedule';
import { prepare } from './small-project';

const wide: Distribution = { kind: 'triangular', low: 50, likely: 100, high: 200 };
const plan = { trials: 400, seed: 5 };
const base = {
  ranges: { price: wide },
  lines: { steel: (read: (input: string) => number) => read('price') },
};
const storm: RegisterEvent = {
  id: 'storm',
  title: 'Storm',
  probability: 0.5,
  costs: [{ line: 'steel', dollars: { kind: 'certain', value: 40 } }],
  delays: [],
};

function run(prepared: PreparedRun, options: Partial<Parameters<typeof simulate>[1]> = {}) {
  const result = simulate(prepared, { ...plan, ...options });
  if (result === undefined) throw new Error('nothing stopped the run');
  return result;
}

describe('a distribution that cannot be', () => {
  it.each<[string, Distribution, string]>([
    ['a certain value', { kind: 'certain', value: Number.NaN }, 'not a finite number'],
    ['a normal mean', { kind: 'normal', mean: Infinity, standardDeviation: 1 }, 'not a finite number'],
    ['a normal spread', { kind: 'normal', mean: 1, standardDeviation: -1 }, 'deviation is negative'],
    ['a lognormal spread', { kind: 'lognormal', logMean: 1, logStandardDeviation: -1 }, 'is negative'],
    ['a lognormal mean', { kind: 'lognormal', logMean: Number.NaN, logStandardDeviation: 1 }, 'not a finite'],
    ['a triangle', { kind: 'triangular', low: 1, likely: Number.NaN, high: 3 }, 'not a finite number'],
    [
      'a listed value',
      { kind: 'discrete', values: [1, Infinity], probabilities: [0.5, 0.5] },
      'not a finite',
    ],
    ['a chance', { kind: 'discrete', values: [1, 2], probabilities: [1.5, -0.5] }, 'outside 0 to 1'],
  ])('%s says so', (_, distribution, words) => {
    const [finding] = distributionFindings(distribution, '/x');
    expect(finding?.place).toBe('/x');
    expect(finding?.message).toContain(words);
  });
});

describe('distributions at their limits', () => {
  it('without a spread give their middle at every share', () => {
    const narrow: readonly [Distribution, number][] = [
      [{ kind: 'normal', mean: 7, standardDeviation: 0 }, 7],
      [{ kind: 'lognormal', logMean: Math.log(7), logStandardDeviation: 0 }, 7],
      [{ kind: 'pert', low: 7, likely: 7, high: 7 }, 7],
    ];
    for (const [distribution, middle] of narrow)
      for (const share of [0.01, 0.5, 0.99]) {
        expect(samplerOf(distribution)(share)).toBeCloseTo(middle, 9);
        expect(quantile(distribution, share)).toBeCloseTo(middle, 9);
      }
  });

  it('the beta distribution begins at 0 and ends at 1', () => {
    const d = beta(2, 3);
    expect([betaShare(d, -1), betaShare(d, 0), betaShare(d, 1), betaShare(d, 2)]).toEqual([0, 0, 1, 1]);
    expect([betaQuantile(d, -1), betaQuantile(d, 0), betaQuantile(d, 1), betaQuantile(d, 2)]).toEqual([
      0, 0, 1, 1,
    ]);
  });

  it('the normal distribution has no ends', () => {
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
    expect(normalQuantile(1e-300)).toBeLessThan(-37);
  });

  it('a correlation of values beyond what the shapes reach has no scores behind it', () => {
    const odd = Float64Array.of(0.5, 0.5);
    expect(scoresForValues(odd, odd, 0.99)).toBeNaN();
    expect(scoresForValues(odd, odd, -0.9)).toBeNaN();
    expect(scoresForValues(odd, odd, 0)).toBeCloseTo(0, 9);
  });

  it('a range that is as likely everywhere keeps its ends alone', () => {
    const given = { likely: 100, low: 80, high: 150, basis: 'surveyed', shape: 'uniform' } as const;
    expect(distributionOf(given, '/x')).toEqual({ kind: 'uniform', low: 80, high: 150 });
  });
});

describe('a correlation that cannot be used', () => {
  const ranges = { price: wide, hours: wide, fixed: { kind: 'certain', value: 3 } } as const;
  const found = (first: string, second: string, correlation: number) =>
    run(prepare({ ranges, correlations: [{ first, second, correlation, of: 'values' }] }))
      .findings.filter(({ code }) => code === 'risk/correlation')
      .map(({ message }) => message);

  it.each([
    ['price', 'price', 0.5, 'both sides are the same'],
    ['price', 'hours', 1, '1 is not between -1 and 1'],
    ['price', 'hours', -1.5, '-1.5 is not between -1 and 1'],
    ['price', 'nothing', 0.5, 'nothing has no range and is no driver'],
  ])('%s with %s at %d is left out and told', (first, second, correlation, words) => {
    expect(found(first, second, correlation).join(' ')).toContain(words);
  });

  it('with a figure that has no range is used as none', () => {
    expect(found('price', 'fixed', 0.5)).toEqual([]);
  });
});

describe('runs without an answer', () => {
  const broken = prepare({ ranges: { price: wide }, lines: { steel: () => Number.NaN } });

  it('are counted, and nothing is read from them', () => {
    const result = run(broken);
    expect(result.withoutAnswer).toBe(plan.trials);
    expect(evenlySafe(result, 0.8)).toBeUndefined();
    expect(equalChanceLine(result, 0.8)).toEqual([]);
    expect(equalChanceLine(run(prepare(base)), 0)).toEqual([]);
  });

  it('leave the cash need of a trial without an answer as well', () => {
    const whole = prepare(base);
    const money: PreparedRun['money'] = batch => {
      const columns = whole.money(batch);
      const cashNeed = columns.total.map((total, t) => (t === 3 ? Number.NaN : total / 2));
      return { ...columns, cashNeed };
    };
    const result = run({ ...whole, money });
    expect(result.withoutAnswer).toBe(Math.ceil(plan.trials / 250));
    expect(Number.isNaN(result.samples.total[3])).toBe(true);
    expect(Number.isNaN(result.samples.finish[3])).toBe(true);
    expect(result.cashNeed?.mean).toBeCloseTo(result.cost.mean / 2, 6);
    expect(result.cashNeed?.planShare).toBeUndefined();
  });

  it('do not make a run sure enough, nor do too few', () => {
    const rule = { costWidth: Infinity, finishWidth: Infinity, atLeast: 10 };
    const values = Float64Array.from({ length: 100 }, (_, i) => i);
    expect(isSureEnough(rule, values, values)).toBe(true);
    expect(isSureEnough({ ...rule, atLeast: 101 }, values, values)).toBe(false);
    expect(isSureEnough({ costWidth: 1e9, finishWidth: 1e9 }, values, values)).toBe(false);
    expect(
      isSureEnough(
        rule,
        values.map(() => Number.NaN),
        values,
      ),
    ).toBe(false);
  });
});

describe('the register of events', () => {
  it('has no mitigations to value where none is offered', () => {
    const prepared = prepare({ ...base, events: [storm] });
    expect(drain(mitigationValues(prepared, plan), prepared, plan, {})).toEqual([]);
  });

  it('values those that are offered alone; another event is left as it is', () => {
    const mitigation = { title: 'Wait', line: 'steel', cost: 5, probability: 0, impactLeft: 1 };
    const flood: RegisterEvent = { ...storm, id: 'flood', mitigation };
    const prepared = prepare({ ...base, events: [storm, flood] });
    const values = drain(mitigationValues(prepared, plan), prepared, plan, {});
    expect(values?.map(({ event }) => event)).toEqual(['flood']);
    expect(values?.[0]?.meanCost).toBeCloseTo(5 - 0.5 * 40, 0);
  });

  it.each([
    ['a line', { ...storm, costs: [{ line: 'nothing', dollars: wide }] }],
    ['an activity', { ...storm, delays: [{ activity: 'nothing', workDays: wide }] }],
  ])('that names %s the run does not have is a fault of the program', (_, event) => {
    expect(() => run(prepare({ ...base, events: [event] }))).toThrow(BugError);
  });

  it('whose mitigation is paid on a line the run does not have is one too', () => {
    const mitigation = { title: 'Wait', line: 'nothing', cost: 5, probability: 0, impactLeft: 1 };
    const prepared = prepare({ ...base, events: [{ ...storm, mitigation }] });
    expect(() => drain(mitigationValues(prepared, plan), prepared, plan, {})).toThrow(BugError);
  });
});

describe('what lies between the plan and the simulation', () => {
  it('adds up to the whole', () => {
    const prepared = prepare({ ...base, events: [{ ...storm, probability: 0.4 }] });
    const gap = drain(planGap(prepared, plan), prepared, plan, {});
    if (gap === undefined) throw new Error('nothing stopped the runs');
    for (const of of ['cost', 'days'] as const)
      expect(gap.events[of] + gap.drivers[of] + gap.ranges[of] + gap.rest[of]).toBeCloseTo(gap.whole[of], 6);
    expect(gap.events.cost).toBeCloseTo(0.4 * 40, 0);
    expect(gap.ranges.cost).toBeCloseTo((50 + 100 + 200) / 3 - 100, 0);
    expect(gap.rest.cost).toBeCloseTo(0, 9);
  });
});

describe('a contingency of lines that do not vary', () => {
  it('falls on all alike where no line stands out', () => {
    const certain = { price: { kind: 'certain', value: 100 } } as const;
    const prepared = prepare({ ranges: certain, lines: { steel: () => 60, paint: () => 40 } });
    const cheaper = { ...prepared, plan: { ...prepared.plan, total: 80 } };
    const { amount, lines } = contingencyAt(cheaper, run(cheaper), 0.8);
    expect(amount).toBe(20);
    expect(lines).toEqual([
      { line: 'steel', amount: 10 },
      { line: 'paint', amount: 10 },
    ]);
  });
});

describe('past projects', () => {
  it('have as many below their middle growth as above it', () => {
    const { middleGrowth, of } = amongPastProjects(1);
    expect(of).toBe(COST_GROWTH.length);
    const [below, above] = [
      COST_GROWTH.filter(({ growth }) => growth < middleGrowth),
      COST_GROWTH.filter(({ growth }) => growth > middleGrowth),
    ];
    expect(below.length).toBeGreaterThan(0);
    expect(below.length).toBe(above.length);
  });
});

describe('an operation of a season', () => {
  const operation: WeatherOperation = { activity: 'tow', series: 'tow', windowDays: 2 };
  const season = { ofDay: Int16Array.of(0, 0, 1, 1), planned: 0 };

  it('starts late in a later season, and beyond the days laid out as planned', () => {
    const late = (day: number) => startsLate({ ...operation, season }, day);
    expect([0, 1.9, 2, 3, 9].map(late)).toEqual([false, false, true, true, false]);
    expect(startsLate(operation, 3)).toBe(false);
  });

  it('that names no activity or no series of the run is a fault of the program', () => {
    const weather = { series: [], operations: [operation], month: new Uint8Array(10) };
    expect(() => run(prepare({ ...base, weather }))).toThrow(BugError);
  });
});
