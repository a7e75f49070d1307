import { describe, expect, it } from 'vitest';
import {
  benefitJson,
  benefitView,
  bidJson,
  bidLeaks,
  bidView,
  contractorRun,
  crewPlanJson,
  crewPlanStudy,
  estimateInput,
  evaluate,
  levelledJson,
  levelledPlan,
  marginView,
  measurementPrices,
  milestones,
  obligationStart,
  openingWork,
  prepareRisk,
  quoteView,
  reviewRows,
  riskRun,
  roughOrder,
  scheduleJson,
  shippedLibrary,
  tabulationView,
  uprightChoices,
  uprightJson,
  withChoices,
  type Evaluation,
} from '../../../core/evaluation';
import type { Figure } from '../../../core/base';
import type { Project } from '../../../core/project';
import { wholeSpan } from '../../../core/evaluation/timing';
import { demoProject, estimated, evaluated } from './demo';

const OPTIONS = { today: '2026-11-24', seed: 1, schedules: 20, upright: false };
const base = demoProject();
const figure = (value: string, unit: string): Figure => ({
  ...{ value, unit, year: 2026 },
  ...{ basis: 'judgement', source: 'A test' },
});

/** The tow has to begin within five work days of the bid documents, which no plan can do. */
const impossible: Project = {
  ...base,
  relationships: [
    { from: 'bid-documents', to: 'ocean-tow', kind: 'SS', maximumLag: figure('5', 'work-day') },
  ],
};
/** A wage in metres: crews without a rate, so a plan without a total. */
const wageless: Project = {
  ...base,
  rates: { ...base.rates, wages: [{ trade: 'labourer', figure: figure('20', 'm') }] },
};
const whole = evaluated(base);
const unscheduled = evaluated(impossible);
const unpriced = evaluated(wageless);

function partsOf({ estimate }: Evaluation) {
  if (estimate === undefined) throw new Error('there is no estimate');
  return estimate;
}

function drained<R>(steps: Generator<unknown, R>): R {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

describe('a plan that cannot be scheduled', () => {
  it('has no money, and the finding says which activities', () => {
    expect(partsOf(unscheduled).money).toBeUndefined();
    expect(unscheduled.findings.map(one => one.code)).toContain('schedule/infeasible');
  });

  it('has no risk, no crew plan, no levelling and no choices of the sinking', () => {
    expect(riskRun(unscheduled).run).toBeUndefined();
    expect(riskRun(unscheduled).findings.map(one => one.code)).toEqual(['risk/nothing-to-simulate']);
    expect(drained(crewPlanStudy(unscheduled, OPTIONS, {}))).toBeUndefined();
    expect(drained(levelledPlan(unscheduled, { seed: 1 }))).toBeUndefined();
    expect(uprightChoices(evaluate(impossible, { ...OPTIONS, upright: true }), OPTIONS)).toBeUndefined();
  });

  it('has no prices of measurements or of openings, and no months', () => {
    const parts = partsOf(unscheduled);
    expect([measurementPrices(parts), openingWork(parts), milestones(unscheduled)]).toEqual([{}, [], {}]);
  });

  it('has no bid, no margin, no review and no quotes side by side, with the finding that tells why', () => {
    const view = bidView(unscheduled);
    const reasons = ['books/no-estimate'];
    expect([view.sheet, bidLeaks(['x'], view)]).toEqual([undefined, []]);
    expect(marginView(unscheduled)).toEqual({ findings: view.findings });
    const { prepared } = prepareRisk(whole);
    if (prepared === undefined) throw new Error('the example can be simulated');
    expect(contractorRun(unscheduled, prepared)).toBeUndefined();
    expect(reviewRows(unscheduled)).toEqual([]);
    const quotes = quoteView(unscheduled);
    expect([quotes.scopes, quotes.findings.map(one => one.code)]).toEqual([[], reasons]);
    const json = bidJson(unscheduled, view, tabulationView(unscheduled));
    expect(Object.keys(json)).toEqual(['scenario', 'findings']);
    expect(Object.keys(benefitJson(unscheduled, benefitView(unscheduled)))).not.toContain('likely');
  });

  it('prints its status without dates or a lower bound', () => {
    const json = scheduleJson(unscheduled);
    expect([json['status'], json['activities']]).toEqual(['infeasible', []]);
    for (const key of ['start', 'finish', 'lowerBoundDays']) expect(json).not.toHaveProperty(key);
  });
});

describe('a plan without a total', () => {
  it('cannot be simulated, and the finding says so', () => {
    const { prepared, findings } = prepareRisk(unpriced);
    expect(prepared).toBeUndefined();
    expect(findings.map(one => one.message).join(' ')).toContain('the total is absent');
  });

  it('has no crew plan to compare: none could be estimated', () => {
    const answer = drained(crewPlanStudy(unpriced, OPTIONS, { starts: 1 }));
    if (answer === undefined) throw new Error('the study has an answer');
    expect([answer.sentence, answer.tried, answer.curve]).toEqual(['No plan could be estimated.', 0, []]);
    const json = crewPlanJson(answer);
    for (const key of ['best', 'present', 'earliest']) expect(json).not.toHaveProperty(key);
  });

  it('can be levelled all the same: its totals are absent, and crews without a rate weigh nothing', () => {
    const plan = drained(levelledPlan(unpriced, { seed: 1 }));
    if (plan === undefined || 'earliest' in plan) throw new Error('there is a plan');
    expect([plan.totalBefore, plan.totalAfter]).toEqual([undefined, undefined]);
    expect(plan.before.crews.map(one => one.crew)).not.toContain('yard-crew');
    expect(levelledJson(plan)).toMatchObject({ isPossible: true, finish: plan.schedule.finish });
    expect(levelledJson({ earliest: '2028-03-01' })).toEqual({ isPossible: false, earliest: '2028-03-01' });
  });

  it('has no rough order: the findings stand alone', () => {
    const request = { hullType: 'freighter', today: '2026-11-24', scope: 'all', schedules: 1 } as const;
    const library = shippedLibrary();
    const hullType = library.hullTypes[0]?.id ?? '';
    const { json } = roughOrder(library, { ...request, hullType, length: figure('120', 'USD') });
    expect(Object.keys(json)).toEqual(['findings']);
  });
});

describe('an evaluation that stopped at the document', () => {
  const broken: Project = {
    ...base,
    relationships: [{ from: 'ocean-tow', to: 'bid-documents', kind: 'FS' }],
  };

  it('has no estimate and no rough order behind it', () => {
    const evaluation = evaluated(broken);
    expect(evaluation.estimate).toBeUndefined();
    expect([milestones(evaluation), Object.keys(scheduleJson(evaluation))]).toEqual([
      {},
      ['scenario', 'findings'],
    ]);
  });

  it('tells a scenario whose change leads nowhere, and estimates nothing', () => {
    const scenarios = [{ id: 'a', title: 'A', changes: [{ at: '/no/such/place', to: 1 }] }];
    const evaluation = evaluated({ ...base, scenarios });
    expect(evaluation.estimate).toBeUndefined();
    expect(evaluation.findings.map(one => one.weight)).toContain('blocks');
  });

  it('stops at a scenario that nobody has', () => {
    expect(() => evaluated(base, 'nobodys')).toThrow('no scenario nobodys');
    const vessel = { ...base.vessel, hullType: 'nobodys' };
    const input = () => estimateInput({ ...base, vessel }, shippedLibrary(), new Set());
    expect(input).toThrow('no hull type nobodys');
  });
});

describe('an evaluation without the upright screen', () => {
  it('prints its findings alone, and is given back as it is when its choices are asked for', () => {
    expect(uprightJson(whole)).toEqual({ scenario: 'fishing-reef', findings: whole.findings });
    expect(withChoices(whole, OPTIONS)).toBe(whole);
    expect(uprightChoices(whole, OPTIONS)).toBeUndefined();
  });
});

describe('an obligation that follows nothing in the plan', () => {
  const { schedule } = estimated(whole);

  it('begins with the finish of the plan', () => {
    expect(obligationStart([], schedule)).toBe(schedule.finish);
    expect(wholeSpan(schedule).calendarDays).toBe(schedule.calendarDays);
  });

  it('has no date in a schedule without activities: that is a fault of ours', () => {
    const { schedule: none } = partsOf(unscheduled);
    expect(() => obligationStart([], none)).toThrow('has no dates');
  });
});
