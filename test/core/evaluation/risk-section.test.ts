import { describe, expect, it } from 'vitest';
import {
  evaluate,
  prepareRisk,
  riskRun,
  simulatedContingency,
  type RiskProgress,
} from '../../../core/evaluation';
import { riskSchema, type Project } from '../../../core/project';
import { contingencyAt, simulate, TRIALS_PER_CHUNK } from '../../../core/risk';
import { demoProject, estimated, evaluated } from './demo';

const demo = demoProject();
const invented = { basis: 'invented for the demo', source: 'invented for this test', year: 2026 } as const;
const figure = (value: string, unit: string, low?: string, high?: string) => ({
  value,
  unit,
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
  ...invented,
});

function withRisk(section: object, more: Partial<Project> = {}): Project {
  return { ...demo, ...more, risk: riskSchema.parse(section) };
}

function preparedOf(project: Project) {
  const { prepared, findings } = prepareRisk(evaluated(project));
  if (prepared === undefined) throw new Error(JSON.stringify(findings));
  return { prepared, findings };
}

const pump = {
  id: 'pump-breaks',
  title: 'The settling pump breaks',
  owner: 'contractor',
  probability: figure('0.3', '1'),
  costs: [{ item: 'tank-washing', dollars: figure('20000', 'USD', '10000', '45000') }],
  delays: [{ item: 'tank-washing', workDays: figure('5', 'work-day', '2', '12') }],
  mitigation: {
    title: 'a second pump on the quay',
    cost: figure('3000', 'USD'),
    probability: figure('0.05', '1'),
    impactLeft: figure('0.5', '1'),
  },
  note: 'no range holds a broken pump',
};

describe('the risk section of a project', () => {
  it('is filled with defaults, so that a project without one is simulated as the library says', () => {
    const { prepared } = preparedOf(demo);
    expect(riskSchema.parse({})).toMatchObject({
      trials: 10_000,
      seed: 1,
      confidence: '0.8',
      weather: 'drawn',
    });
    expect(prepared.run.events.length).toBeGreaterThan(5);
  });

  it('adds its own events, replaces those of the library by id and leaves out those it names', () => {
    const own = { ...pump, id: 'storm-at-berth' };
    const { prepared } = preparedOf(
      withRisk({
        register: [pump, own],
        leftOut: [{ event: 'lien', reason: 'the yard is paid in advance' }],
      }),
    );
    const events = new Map(prepared.run.events.map(event => [event.id, event]));
    expect(events.get('storm-at-berth')?.title).toBe(pump.title);
    expect(events.has('lien')).toBe(false);
    expect(events.get('pump-breaks')).toEqual({
      id: 'pump-breaks',
      title: pump.title,
      owner: 'contractor',
      probability: 0.3,
      costs: [
        { line: 'tank-washing', dollars: { kind: 'triangular', low: 10000, likely: 20000, high: 45000 } },
      ],
      delays: [{ activity: 'tank-washing', workDays: { kind: 'triangular', low: 2, likely: 5, high: 12 } }],
      mitigation: {
        title: 'a second pump on the quay',
        cost: 3000,
        line: 'tank-washing',
        probability: 0.05,
        impactLeft: 0.5,
      },
      note: pump.note,
    });
  });

  it('puts its ranges, surveys, driver factors and correlations in place of those of the library', () => {
    const given = 'locationFactor/location';
    const { prepared } = preparedOf(
      withRisk({
        ranges: [{ given, low: '0.99', high: '1.02', shape: 'triangular', ...invented }],
        surveys: [
          { given, title: 'ask three yards', cost: figure('2000', 'USD'), rangeLeft: figure('0.25', '1') },
        ],
        drivers: [{ driver: 'tug-market', factor: figure('1', '1', '0.95', '1.05') }],
        correlations: [{ first: given, second: 'labour-market', correlation: figure('0.5', '1') }],
      }),
    );
    const { inputs, drivers, correlations } = prepared.run;
    expect(inputs.find(input => input.id === given)).toMatchObject({
      distribution: { kind: 'triangular', low: 0.99, likely: 1, high: 1.02 },
      survey: { cost: 2000, rangeLeft: 0.25 },
    });
    expect(drivers.find(driver => driver.id === 'tug-market')?.factor).toMatchObject({
      low: 0.95,
      high: 1.05,
    });
    expect(correlations).toContainEqual({
      first: given,
      second: 'labour-market',
      correlation: 0.5,
      of: 'ranks',
    });
  });

  it.each([
    [
      { low: '0.99', high: '1.02', shape: 'pert' },
      { kind: 'pert', low: 0.99, likely: 1, high: 1.02 },
    ],
    [
      { low: '0.95', high: '1.1', shape: 'uniform' },
      { kind: 'uniform', low: 0.95, high: 1.1 },
    ],
    [
      { low: '0.9', high: '1.2', shape: 'lognormal' },
      // The logarithm of P90 lies 1.2815515655 standard deviations above the middle of P10 and P90.
      {
        kind: 'lognormal',
        logMean: Math.log(0.9 * 1.2) / 2,
        logStandardDeviation: Math.log(1.2 / 0.9) / 2 / 1.2815515655446004,
      },
    ],
    [
      {
        low: '0.9',
        high: '1.3',
        shape: 'discrete',
        outcomes: [
          { value: '0.9', probability: '0.25' },
          { value: '1', probability: '0.5' },
          { value: '1.3', probability: '0.25' },
        ],
      },
      { kind: 'discrete', values: [0.9, 1, 1.3], probabilities: [0.25, 0.5, 0.25] },
    ],
  ])('draws a range of the document in its shape: %o', (range, drawn) => {
    const given = 'locationFactor/location';
    const { prepared, findings } = preparedOf(withRisk({ ranges: [{ given, ...range, ...invented }] }));
    const { distribution } = prepared.run.inputs.find(input => input.id === given) ?? {};
    expect(Object.keys(distribution ?? {})).toEqual(Object.keys(drawn));
    for (const [key, value] of Object.entries(drawn)) {
      const found: unknown = Object.entries(distribution ?? {}).find(([name]) => name === key)?.[1];
      if (typeof value === 'number') expect(found).toBeCloseTo(value, 12);
      else expect(found).toEqual(value);
    }
    expect(findings.filter(finding => finding.code === 'risk/range-shape')).toEqual([]);
    const result = simulate(prepared.run, { trials: 500, seed: 1, ranksDrivers: false });
    expect(result?.withoutAnswer).toBe(0);
  });

  it.each([
    [{ low: '-0.5', high: '1.2', shape: 'lognormal' }],
    [{ low: '0.9', high: '1.2', shape: 'discrete' }],
    [
      {
        low: '0.9',
        high: '1.2',
        shape: 'discrete',
        outcomes: [
          { value: '0.9', probability: '0.5' },
          { value: '1.2', probability: '0.6' },
        ],
      },
    ],
  ])('keeps the range of the library, with a finding, where one cannot be drawn: %o', range => {
    const given = 'locationFactor/location';
    const { prepared, findings } = preparedOf(withRisk({ ranges: [{ given, ...range, ...invented }] }));
    expect(findings.map(finding => finding.code)).toContain('risk/range-shape');
    expect(prepared.run.inputs.find(input => input.id === given)?.distribution.kind).toBe('pert');
  });

  it('lets the weather be the allowance of the plan', () => {
    const { prepared } = preparedOf(withRisk({ weather: 'allowance' }));
    expect(prepared.run.weather).toBeUndefined();
  });

  it.each([
    [{ register: [{ ...pump, probability: figure('1.5', '1') }] }, 'given/out-of-limits'],
    [{ register: [{ ...pump, probability: figure('30', 'h') }] }, 'given/wrong-unit'],
    [
      { register: [{ ...pump, costs: [{ item: 'no-such-item', dollars: figure('1', 'USD') }] }] },
      'risk/faulty-section',
    ],
    [{ register: [pump, pump] }, 'risk/faulty-section'],
    [{ register: [{ ...pump, costs: [], delays: [] }] }, 'risk/no-impact'],
    [{ ranges: [{ given: 'x', low: '2', high: '1', ...invented }] }, 'risk/faulty-section'],
    [{ correlations: [{ first: 'a', second: 'a', correlation: figure('0.5', '1') }] }, 'risk/faulty-section'],
  ])('is checked: %j is the finding %s', (section, code) => {
    expect(evaluated(withRisk(section)).findings.map(finding => finding.code)).toContain(code);
  });

  it('leaves a faulty event out of the simulation and simulates the rest', () => {
    const faulty = { ...pump, probability: figure('1.5', '1') };
    const { prepared } = preparedOf(withRisk({ register: [faulty] }));
    expect(prepared.run.events.some(event => event.id === pump.id)).toBe(false);
    expect(prepared.run.events.length).toBeGreaterThan(5);
  });

  it('says which entries change nothing', () => {
    const { findings } = preparedOf(
      withRisk({
        ranges: [
          { given: 'no/such/given', low: '1', high: '2', ...invented },
          { given: 'locationFactor/location', low: '2', high: '3', ...invented },
        ],
        leftOut: [{ event: 'no-such-event', reason: 'none' }],
      }),
    );
    expect(findings.map(finding => finding.code)).toEqual([
      'risk/range-without-value',
      'risk/unknown-range',
      'risk/unknown-event',
    ]);
  });
});

describe('contingency at a confidence', () => {
  const project = { ...demo, contingency: { policy: 'confidence', confidence: '0.8' } } as const;

  it('is a finding and absent until a simulation has run', () => {
    const evaluation = evaluated(project);
    const { money } = estimated(evaluation);
    expect(evaluation.findings.map(f => f.code)).toContain('risk/contingency-not-simulated');
    expect([money.result.money(money.sums.contingency), money.result.money(money.sums.budget)]).toEqual([
      undefined,
      undefined,
    ]);
  });

  it('is that level less the plan to the cent, split to lines that add up to the cent', () => {
    const before = evaluated(project);
    const { prepared } = prepareRisk(before);
    const result = prepared && simulate(prepared.run, { trials: 1000, seed: 3, ranksDrivers: false });
    if (prepared === undefined || result === undefined) throw new Error('the example could not be simulated');
    const simulated = simulatedContingency(project, prepared.run, result);
    const { amount, budget, lines } = contingencyAt(prepared.run, result, 0.8);
    const cents = lines.reduce((sum, line) => sum + Math.round(line.amount * 100), 0);
    expect(cents).toBe(Math.round(amount * 100));
    if (simulated === undefined) throw new Error('the policy is a confidence');
    const after = evaluate(project, {
      today: '2026-11-24',
      seed: 1,
      schedules: 20,
      upright: false,
      simulated,
    });
    const { money } = estimated(after);
    expect(money.result.money(money.sums.contingency)?.cents).toBe(Math.round(amount * 100));
    expect(money.result.money(money.sums.budget)?.cents).toBe(Math.round(budget * 100));
    expect(after.findings.map(f => f.code)).not.toContain('risk/contingency-not-simulated');
  });

  it('is told to be of an earlier plan when the plan has changed since', () => {
    const simulated = { confidence: 0.8, amount: 100, planTotal: 1000, trials: 1000, seed: 1 };
    const after = evaluate(project, {
      today: '2026-11-24',
      seed: 1,
      schedules: 20,
      upright: false,
      simulated,
    });
    expect(after.findings.map(f => f.code)).toContain('risk/contingency-not-simulated');
  });

  it('is never given beside a percentage', () => {
    const { share } = demo.contingency;
    const both = { ...demo, contingency: { policy: 'confidence', confidence: '0.8', share } } as const;
    expect(evaluated(both).findings.map(f => f.code)).toContain('risk/two-contingencies');
  });
});

describe('a run carried on step by step', () => {
  it('asks for the deadline, without one for the end of the grant, without both for the finish of the plan', () => {
    const { deadline, ...open } = demo.calendars;
    const { funding, ...bare } = demo;
    const dateOf = (project: Project) => {
      const { run } = riskRun(
        evaluated({ ...project, risk: riskSchema.parse({ trials: 2 * TRIALS_PER_CHUNK }) }),
      );
      let progress: RiskProgress = { done: 0, of: 1 };
      while (run !== undefined && progress.result === undefined) progress = run.step();
      return progress.result?.view.joint.date;
    };
    const ends = (funding?.sources ?? []).flatMap(({ period }) =>
      period === undefined ? [] : [period.finish],
    );
    expect(dateOf(demo)).toBe(deadline);
    expect(dateOf({ ...demo, calendars: open })).toBe(ends.toSorted()[0]);
    const plain = { ...bare, calendars: open };
    expect(dateOf(plain)).toBe(evaluated(plain).estimate?.schedule.finish);
  });

  const evaluation = evaluated(withRisk({ trials: 4 * TRIALS_PER_CHUNK, register: [pump] }));

  it('gives the answer of the whole simulation, with rows for curves, joint confidence, drivers and register', () => {
    const { run } = riskRun(evaluation);
    let progress: RiskProgress = { done: 0, of: 1 };
    while (run !== undefined && progress.result === undefined) progress = run.step();
    const { result } = progress;
    if (result === undefined || run === undefined) throw new Error('the run has no answer');
    const whole = simulate(run.prepared.run, { trials: 4 * TRIALS_PER_CHUNK, seed: 1 });
    expect([...result.simulation.samples.total]).toEqual([...(whole?.samples.total ?? [])]);
    const { view } = result;
    expect(view.cost.curve).toHaveLength(101);
    expect(view.planSentence).toMatch(/^The plan figure is \d+ in 100\.$/);
    expect(view.joint.sentence).toMatch(/^\d+ in 100 runs end inside the money and the date\.$/);
    expect(view.frontier.length).toBeGreaterThan(1);
    const shares = view.drivesFinish.map(row => row.share);
    expect(shares[0]).toBe(1);
    expect(shares.every(share => share > 0 && share <= 1)).toBe(true);
    const row = view.register.find(event => event.id === pump.id);
    expect(row?.mitigation?.buys).toMatchObject({ event: pump.id, cost: 3000 });
    expect(view.cashNeed?.plan).toBeGreaterThan(0);
  });

  it('runs one chunk of trials a step, so that a cancel is heard between two', () => {
    const { run } = riskRun(evaluation);
    const steps: number[] = [];
    let progress: RiskProgress = { done: 0, of: 1 };
    while (run !== undefined && progress.result === undefined) {
      progress = run.step();
      steps.push(progress.done);
    }
    expect(steps[0]).toBe(1);
    expect(steps.every((done, i) => i === 0 || done - (steps[i - 1] ?? 0) <= 1)).toBe(true);
  });
});
