import { describe, expect, it } from 'vitest';
import {
  contingencyOf,
  prepareRisk,
  riskJson,
  riskRun,
  shippedLibrary,
  shippedRisk,
} from '../../../core/evaluation';
import { expectedStandby } from '../../../core/evaluation/crews/weather-standby';
import { correlationsOf } from '../../../core/evaluation/risk/correlations';
import { spreadOf } from '../../../core/evaluation/risk/parts';
import { gapSentence } from '../../../core/evaluation/risk/plan-words';
import { rangedGivens } from '../../../core/evaluation/risk/ranged-givens';
import { registerEvents } from '../../../core/evaluation/risk/register';
import { riskDrivers } from '../../../core/evaluation/risk/risk-drivers';
import { riskSectionOf } from '../../../core/evaluation/risk/section';
import {
  dateRules,
  fillStartDays,
  monthTable,
  obligationRules,
  spanLength,
  spanRules,
} from '../../../core/evaluation/risk/trial-days';
import { weatherOf } from '../../../core/evaluation/risk/weather';
import { dayOf } from '../../../core/calendar';
import { riskSchema, type Project } from '../../../core/project';
import { simulate, type PlanGap } from '../../../core/risk';
import { chainScheduler } from '../../../core/scheduling';
import { demoProject, estimated, evaluated } from './demo';

const invented = { basis: 'invented for the demo', source: 'invented for this test', year: 2026 } as const;
const figure = (value: string, unit: string) => ({ value, unit, ...invented });
const demo = demoProject();
const evaluation = evaluated(demo);
const parts = estimated(evaluation);
const scheduler = chainOf(parts);
const file = shippedRisk();

function chainOf({ problem, schedule }: ReturnType<typeof estimated>) {
  const found = chainScheduler(problem, schedule);
  if (found === undefined) throw new Error('the plan can be told by chains');
  return found;
}

function simulated(project: Project) {
  const of = evaluated(project);
  const { prepared, findings } = prepareRisk(of);
  const result = prepared && simulate(prepared.run, { trials: 300, seed: 3 });
  if (prepared === undefined || result === undefined) throw new Error(JSON.stringify(findings));
  return { of, prepared, result };
}

describe('the sentence of why the runs are not the plan', () => {
  const part = (cost: number, days: number) => ({ cost, days });
  const gap = (whole: PlanGap['whole'], other: PlanGap['whole']): PlanGap => ({
    ...{ whole, ranges: other, drivers: part(0, 0) },
    ...{ events: part(1_500, 1.2), rest: part(-2_600, -0.9) },
  });

  it('says dearer and later where the runs are', () => {
    const words = gapSentence(gap(part(120_400, 12.4), part(121_500, 12.1)));
    expect(words).toContain('The runs cost $120,000 more in the mean and end 12 calendar days later:');
    expect(words).toContain('+$122,000 and +12 calendar days by ranges');
    expect(words).toContain('+$2,000 and +1 calendar day by events of the register');
  });

  it('says cheaper and earlier where the runs are', () => {
    const words = gapSentence(gap(part(-120_400, -12.4), part(-119_300, -12.7)));
    expect(words).toContain('The runs cost $120,000 less in the mean and end 12 calendar days earlier:');
    expect(words).toContain('-13 calendar days by ranges');
    expect(words).toContain('-1 calendar day by waiting for weather');
  });
});

describe('a simulation as the command line prints it', () => {
  const part = { cost: 1000.126, days: 1.26 };
  const { of, prepared, result } = simulated(demo);
  const berth = prepared.run.events.find(event => event.id === 'berth-wanted-back');
  const whatIfs = {
    mitigations: [
      {
        ...{ event: 'berth-wanted-back', title: 'a second berth', cost: 18_000, meanCost: -500.126 },
        ...{ standardError: 20.004, p80Cost: -700, p80Finish: -1 },
      },
    ],
    gap: { whole: part, ranges: part, drivers: part, events: part, rest: part },
  };
  const json = riskJson(of, prepared, result, 1.5, [], whatIfs);

  it('holds costs to the cent and rising, dates, chances of award, grant and deadline, and the cash need', () => {
    const cost = json['cost'] as Record<'p10' | 'p50' | 'p80' | 'p90', number>;
    expect([cost.p10 <= cost.p50, cost.p50 <= cost.p80, cost.p80 <= cost.p90]).toEqual([true, true, true]);
    expect(Object.values(cost).every(one => Math.abs(one * 100 - Math.round(one * 100)) < 1e-4)).toBe(true);
    expect(json).toMatchObject({
      ...{ scenario: 'fishing-reef', seconds: 1.5, trials: 300, seed: 3, confidence: 0.8 },
      ...{ deadline: '2029-03-31', grantPeriodEnd: '2029-12-31', events: prepared.run.events.length },
      plan: { total: prepared.run.plan.total },
    });
    for (const key of ['cashNeed', 'chanceInsideAward', 'chanceOfMissingDeadline', 'safe'])
      expect(json).toHaveProperty(key);
  });

  it('tells of a register event who owns it and what its mitigation was found to buy, to the cent', () => {
    const rows = json['register'] as { id: string }[];
    expect(berth?.owner).toBe('reef coordinator');
    expect(rows.find(row => row.id === 'berth-wanted-back')).toMatchObject({
      owner: 'reef coordinator',
      mitigation: { cost: 18_000, meanCost: -500.13, standardError: 20, p80FinishDays: -1 },
    });
  });

  it('takes the difference from the plan apart, days to a tenth', () => {
    expect(json['planGap']).toMatchObject({ whole: { cost: 1000.13, days: 1.3 } });
  });

  it('leaves out what the project does not have: funding, deadline, owner, mitigation, note', () => {
    const register = [
      {
        ...{ id: 'crane-late', title: 'The crane comes late', probability: figure('0.5', '1') },
        delays: [{ item: 'topside-lifts', workDays: figure('5', 'work-day') }],
      },
    ];
    const { deadline: _, ...calendars } = demo.calendars;
    const { funding: _funding, ...bare } = { ...demo, calendars };
    const contingency = { policy: 'confidence' as const };
    const other = simulated({ ...bare, risk: riskSchema.parse({ register }) });
    const printed = riskJson(
      { ...other.of, project: { ...other.of.project, contingency } },
      ...([other.prepared, other.result, 2, []] as const),
    );
    for (const key of ['cashNeed', 'deadline', 'grantPeriodEnd', 'awardBudget', 'planGap'])
      expect(printed).not.toHaveProperty(key);
    expect(printed['contingency']).toMatchObject({ policy: 'confidence', reaches: undefined });
    const rows = printed['register'] as { id: string }[];
    expect(rows.find(row => row.id === 'crane-late')).not.toHaveProperty('owner');
    expect(rows.find(row => row.id === 'crane-late')).not.toHaveProperty('mitigation');
  });
});

describe('the contingency of a policy', () => {
  const { prepared, result } = simulated(demo);

  it('by confidence is what the runs ask for beyond the plan, and reaches at least that far', () => {
    const project = { ...demo, contingency: { policy: 'confidence' as const, confidence: '0.9' } };
    const found = contingencyOf(project, evaluation.estimate, prepared.run, result);
    expect(found.budget).toBeCloseTo(prepared.run.plan.total + (found.amount ?? NaN), 2);
    expect(found.reaches).toBeGreaterThanOrEqual(0.9);
  });

  it('is absent without a confidence, and without an estimate to take a share of', () => {
    const nothing = { amount: undefined, budget: undefined, reaches: undefined, lines: [] };
    const open = { ...demo, contingency: { policy: 'confidence' as const } };
    expect(contingencyOf(open, evaluation.estimate, prepared.run, result)).toEqual({
      ...nothing,
      policy: 'confidence',
    });
    expect(contingencyOf(demo, undefined, prepared.run, result)).toEqual({
      ...nothing,
      policy: 'percentage',
    });
  });
});

describe('a run that is carried on step by step', () => {
  it('gives its answer again when it is asked for a step beyond the last', () => {
    const { run } = riskRun(evaluation, { trials: 300, seed: 3, triesWhatIfs: false });
    if (run === undefined) throw new Error('the example can be simulated');
    let last = run.step();
    while (last.result === undefined) last = run.step();
    const again = run.step();
    expect([again.done, again.result?.simulation.cost]).toEqual([last.done, last.result.simulation.cost]);
  });
});

describe('with all ranges collapsed and drivers kept', () => {
  it('a given that a driver moves stands at its likely value', () => {
    const { prepared } = prepareRisk(evaluation, { ranges: false });
    const likely = new Map(rangedGivens(parts, file.narrowings).map(given => [given.id, given.likely]));
    const moved = new Set(prepared?.run.drivers.flatMap(driver => driver.inputs));
    const inputs = prepared?.run.inputs ?? [];
    expect(inputs.length).toBeGreaterThan(20);
    expect(inputs.map(one => one.distribution)).toEqual(
      inputs.map(one => ({ kind: 'certain', value: likely.get(one.id) })),
    );
    expect(inputs.filter(one => !moved.has(one.id))).toEqual([]);
  });
});

describe('the register on an estimate', () => {
  const [row] = file.events.filter(one => one.cost !== undefined && one.delay === undefined);
  const later = file.events.find(one => one.delay !== undefined);
  if (row === undefined || later === undefined) throw new Error('the library has both kinds of events');
  const none = { register: [], leftOut: [] };
  const never = () => false;
  const nowhere = { ...parts, items: [] };

  it('leaves out an event of the library that finds no line to cost anything on', () => {
    expect(registerEvents(parts, [row], none, never).map(event => event.id)).toEqual([row.id]);
    expect(registerEvents(nowhere, [row], none, never)).toEqual([]);
  });

  it('keeps an event that only delays, without a mitigation where no line could pay for one', () => {
    const [event] = registerEvents(nowhere, [{ ...later, cost: undefined }], none, never);
    expect([event?.costs, event?.delays.length]).toEqual([[], 1]);
    expect(event).not.toHaveProperty('mitigation');
  });

  const own = {
    ...{ id: 'own', title: 'Something of our own', probability: figure('0.2', '1') },
    costs: [{ item: 'nobodys', dollars: figure('100', 'USD') }],
    delays: [{ item: 'nobodys', workDays: figure('3', 'work-day') }],
  };

  it('leaves out an event of the project whose lines and activities the scenario does not have', () => {
    expect(registerEvents(parts, [], { ...none, register: [own] }, never)).toEqual([]);
  });

  it('takes an event of the project as it is written: no owner, no mitigation, no note, a certain cost', () => {
    const costs = [...own.costs, { item: 'tank-washing', dollars: figure('100', 'USD') }];
    expect(registerEvents(parts, [], { ...none, register: [{ ...own, costs }] }, never)).toEqual([
      {
        ...{ id: 'own', title: 'Something of our own', probability: 0.2, delays: [] },
        costs: [{ line: 'tank-washing', dollars: { kind: 'certain', value: 100 } }],
      },
    ]);
  });
});

describe('figures, drivers and correlations of a run', () => {
  it('a figure with one end reaches from its value to that end', () => {
    expect(spreadOf({ value: '2', high: '5' })).toEqual({ kind: 'triangular', low: 2, likely: 2, high: 5 });
    expect(spreadOf({ value: '2', low: '1' }, 10)).toEqual({
      ...{ kind: 'triangular', low: 10, likely: 20, high: 20 },
    });
  });

  it('a driver that moves nothing of the estimate is left out', () => {
    expect(riskDrivers(file.drivers, [], shippedLibrary())).toEqual([]);
  });

  it('a correlation of the project takes the place of the one of the library, whichever is named first', () => {
    const [pair] = file.correlations;
    if (pair === undefined) throw new Error('the library has a correlation');
    const ranged = rangedGivens(parts, file.narrowings);
    const drawn = [pair.first, pair.second].flatMap(
      column => ranged.find(given => given.column === column) ?? [],
    );
    const [a, b] = drawn.map(given => given.id);
    if (a === undefined || b === undefined) throw new Error('both are drawn in the example');
    const values = (correlations: { first: string; second: string }[]) =>
      correlationsOf(
        { ...file, correlations: [pair] },
        riskSchema.parse({
          correlations: correlations.map(one => ({ ...one, correlation: figure('0.1', '1') })),
        }),
        () => false,
        drawn,
      ).map(one => one.correlation);
    expect(values([])).toEqual([Number(pair.correlation.value)]);
    expect(values([{ first: a, second: b }])).toEqual([0.1]);
    expect(values([{ first: b, second: a }])).toEqual([0.1]);
  });

  it('a project without a risk section is simulated by the defaults', () => {
    const { risk: _, ...without } = demo;
    expect(riskSectionOf(without)).toEqual(riskSchema.parse({}));
  });
});

describe('the days of trials', () => {
  it('fall into the month of the prices where these are held at one year', () => {
    const { fixedYear: _, ...free } = parts.input.prices;
    expect(new Set(monthTable(scheduler, { ...free, fixedYear: 2026 }))).toEqual(new Set([0]));
    expect(new Set(monthTable(scheduler, free)).size).toBeGreaterThan(12);
  });

  it('a span has no work days beyond the horizon, and calendar days all the same', () => {
    const [span] = spanRules(parts, scheduler);
    if (span === undefined) throw new Error('the example has spans');
    const far = scheduler.horizon + 100;
    expect(spanLength({ ...span, unit: 'work-day' }, 0, 6)).toBe(5);
    expect(spanLength({ ...span, unit: 'work-day' }, far, far + 6)).toBeNaN();
    expect(spanLength({ ...span, unit: 'work-day' }, 0, far)).toBeNaN();
    expect(spanLength({ ...span, unit: 'day' }, far, far + 6)).toBe(7);
  });

  it('an activity that has begun keeps its first day in every trial', () => {
    const begun = { item: 'source-screen', note: '', actualStart: '2027-01-05' };
    const under = estimated(evaluated({ ...demo, statusDate: '2027-01-06', items: [begun] }));
    const chain = chainOf(under);
    const rule = dateRules(under, chain).find(one => chain.activities[one.at] === begun.item);
    if (rule === undefined) throw new Error('the activity has a rule');
    const out = new Float64Array(3);
    const columns = chain.activities.map(() => Float64Array.of(40, 50, 60));
    const batch = { durations: columns, starts: columns, finishes: columns, waits: columns };
    fillStartDays(rule, { n: 3, inputs: new Map(), asksCash: false, ...batch }, out);
    const first = dayOf('2027-01-05') - chain.first;
    expect([...out]).toEqual([first, first, first]);
  });

  it('an obligation that follows nothing of the plan follows all of it', () => {
    const rules = obligationRules(parts, scheduler);
    expect(rules.length).toBeGreaterThan(0);
    const loose = parts.planned.map(plan => ({ ...plan, item: { ...plan.item, after: [] } }));
    const all = obligationRules({ ...parts, planned: loose }, scheduler);
    expect(all.map(rule => rule.after.length)).toEqual(rules.map(() => scheduler.activities.length));
  });
});

describe('the weather of a run', () => {
  it('is no matter where no operation waits for a window, or all that do have begun', () => {
    expect(weatherOf(parts, scheduler, file.weather)?.operations.length).toBeGreaterThan(0);
    const calm = { ...file.weather, series: [] };
    expect(weatherOf(parts, scheduler, calm)).toBeUndefined();
    const activities = parts.problem.activities.map(one => ({ ...one, actualStart: '2027-01-05' }));
    const begun = { ...parts, problem: { ...parts.problem, activities } };
    expect(weatherOf(begun, scheduler, file.weather)).toBeUndefined();
    expect(expectedStandby(begun)).toEqual({ cost: 0, days: 0 });
    expect(expectedStandby(parts)?.days).toBeGreaterThan(0);
  });
});
