import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import { dayOf } from '../../../core/calendar';
import type { DriverRow, SimulationResult } from '../../../core/risk';
import { factsOf, riskFacts, riskStep, summaryOf } from '../../../core/scenario';
import { demoProject, evaluated } from '../evaluation/demo';

const project = demoProject();
const a = evaluated(project, 'fishing-reef');
const first = dayOf('2029-01-01');

const driver = (i: number): DriverRow => ({
  ...{ id: `d${i}`, title: `Driver ${i}`, kind: 'range', contribution: (10 - i) / 100 },
  ...{ finishContribution: 0, costAtLow: 0, costAtHigh: 0, finishAtLow: 0, finishAtHigh: 0 },
});
const spread = (plan: number) => ({
  ...{ mean: 0, standardDeviation: 0, percentiles: [], curve: [], plan, planShare: 0.5 },
});

/** Ten runs: costs of one to ten dollars, done by the first to the tenth day, in no order. */
const result: SimulationResult = {
  ...{ seed: 7, trialsAsked: 10, trials: 10, withoutAnswer: 0, cost: spread(5), finish: spread(5) },
  ...{ cashNeed: undefined, anotherSeason: 0, drivesFinish: undefined, findings: [] },
  drivers: Array.from({ length: 10 }, (_, i) => driver(i)),
  samples: {
    total: Float64Array.of(3, 1, 2, 10, 9, 4, 5, 6, 7, 8),
    finish: Float64Array.of(3, 1, 2, 10, 9, 4, 5, 6, 7, 8),
    ...{ cashNeed: undefined, missedSeason: new Uint8Array(10), drives: undefined },
    ...{ lineExcess: new Float64Array(), lineProduct: new Float64Array(), classes: new Float64Array() },
  },
};

/** The scenario with another deadline and another end of its grant. */
function ending(deadline: string | undefined, grant: string | undefined): Evaluation {
  const { deadline: _, ...calendars } = project.calendars;
  const { funding, ...rest } = project;
  const sources = funding?.sources.map(({ period, ...source }) =>
    period && grant !== undefined ? { ...source, period: { ...period, finish: grant } } : source,
  );
  return {
    ...a,
    project: {
      ...rest,
      ...(funding && sources && { funding: { ...funding, sources } }),
      calendars: { ...calendars, ...(deadline !== undefined && { deadline }) },
    },
  };
}

describe('how sure a scenario is, from ten runs', () => {
  test('are the costs and last days that 5, 8 and 9 of them do not exceed', () => {
    expect(factsOf(ending(undefined, undefined), result, first)).toMatchObject({
      ...{ scenario: 'fishing-reef', trials: 10, seed: 7, p50: 5, p80: 8, p90: 9 },
      ...{ finishP50: '2029-01-05', finishP80: '2029-01-08', cost: result.samples.total },
    });
  });

  test('three of ten end after the seventh day, the deadline, and six after the fourth, the end of the grant', () => {
    const facts = factsOf(ending('2029-01-07', '2029-01-04'), result, first);
    expect(facts.chanceOfDeadline).toBeCloseTo(0.7, 12);
    expect(facts.missesGrant).toBeCloseTo(0.6, 12);
    const neither = factsOf(ending(undefined, undefined), result, first);
    expect(neither).not.toHaveProperty('chanceOfDeadline');
    expect(neither).not.toHaveProperty('missesGrant');
  });

  test('five of ten stay inside an award of the five dollars of the plan; without an award nothing is said', () => {
    const { funding, ...own } = project;
    if (funding === undefined) throw new Error('the example has an award');
    const held = { ...funding.contingency, documented: false, acceptedByAgency: false };
    const refused = { ...a, project: { ...own, funding: { ...funding, contingency: held } } };
    expect(factsOf(refused, result, first).award).toEqual({
      budget: 5,
      holdsContingency: false,
      chance: 0.5,
    });
    // A contingency that the grant may bear is part of the award: far more than these runs cost.
    const contingency = (summaryOf(a)?.contingency?.cents ?? Number.NaN) / 100;
    expect(factsOf(a, result, first).award).toEqual({
      budget: 5 + contingency,
      ...{ holdsContingency: true, chance: 1 },
    });
    expect(factsOf({ ...a, project: own }, result, first)).not.toHaveProperty('award');
  });

  test('the eight largest drivers are told', () => {
    const { drivers } = factsOf(a, result, first);
    expect(drivers).toHaveLength(8);
    expect(drivers[0]).toEqual({ title: 'Driver 0', share: 0.1 });
    expect(drivers.at(-1)).toEqual({ title: 'Driver 7', share: 0.03 });
  });

  test('what has no estimate cannot be simulated, and a run that is told to stop has none', () => {
    const { estimate: _, ...empty } = a;
    expect(riskFacts(empty, { trials: 10, seed: 1 })).toBeUndefined();
    expect(riskFacts(a, { trials: 10, seed: 1 }, () => true)).toBeUndefined();
  });
});

describe('the step of risk', () => {
  const bare = evaluated({ ...project, contingency: { policy: 'confidence' } }, 'fishing-reef');
  const fact = factsOf(a, result, first);

  test('is not told where one of the two has no contingency, or no simulation', () => {
    expect(riskStep(a, bare)).toBeUndefined();
    expect(riskStep(bare, a)).toBeUndefined();
    expect(riskStep(bare, { ...bare, scenario: { ...bare.scenario, id: 'other' } }, [fact])).toBeUndefined();
    const { estimate: _, ...empty } = a;
    expect([riskStep(a, empty), riskStep(empty, a, [fact])]).toEqual([undefined, undefined]);
  });

  test('in words says what it adds and where it leads', () => {
    expect(riskStep(bare, bare, [fact])).toMatchObject({
      kind: 'simulation',
      title: 'Risk: what 80 of 100 simulated runs add beyond each total',
      amount: { cents: 0 },
      end: { title: 'Difference of what 80 of 100 runs cost at most', amount: { cents: 0 } },
    });
    expect(riskStep(a, a)).toMatchObject({
      kind: 'contingency',
      title: 'Risk: the contingency, a percentage of each total',
      end: { title: 'Difference of the budgets' },
    });
    const asked: Evaluation = { ...a, project: { ...a.project, contingency: { policy: 'confidence' } } };
    expect(riskStep(a, asked)?.title).toBe('Risk: the contingency that the simulation asks for');
  });
});
