import { describe, expect, test } from 'vitest';
import {
  historyView,
  prepareRisk,
  reviewInput,
  reviewRows,
  shippedBookRules,
  bookBasis,
  type Evaluation,
} from '../../../core/evaluation';
import type { Figure } from '../../../core/base';
import type { Project } from '../../../core/project';
import type { ReviewRow } from '../../../core/review';
import { simulate } from '../../../core/risk';
import { demoProject, evaluated } from './demo';

const { record: _record, ...BARE } = demoProject();
const EVALUATION = evaluated(BARE);
const SIMULATION = simulated(EVALUATION);

type Record = NonNullable<Project['record']>;

/** The same evaluation under another record: only the review reads it. */
function withRecord(record: Partial<Record>): Evaluation {
  const whole: Record = { crossChecks: [], leftOut: [], reasons: [], lessons: [], ...record };
  return { ...EVALUATION, project: { ...BARE, record: whole } };
}

function simulated(evaluation: Evaluation) {
  const { prepared } = prepareRisk(evaluation);
  const result = prepared && simulate(prepared.run, { trials: 400, seed: 3 });
  if (result === undefined) throw new Error('the demo can be simulated');
  return result;
}

function rowOf(rows: readonly ReviewRow[], id: string): ReviewRow {
  const row = rows.find(one => one.practiceId === id);
  if (row === undefined) throw new Error(`no practice ${id}`);
  return row;
}

const usd = (value: string): Figure => ({
  value,
  unit: 'USD',
  basis: 'judgement',
  source: 'made up for the test',
});
const total = bookBasis(EVALUATION).basis?.summary.total?.cents ?? Number.NaN;

describe('a simulation in the quality review', () => {
  test('without one the review says that it was not done, and does not guess', () => {
    const rows = reviewRows(EVALUATION);
    expect(rowOf(rows, 'sensitivity').standing).toBe('not met');
    expect(rowOf(rows, 'uncertainty').evidence).toEqual(['no simulation was run']);
    expect(rowOf(rows, 'schedule-risk').evidence).toEqual(['the schedule was not simulated']);
    expect(rowOf(rows, 'contingency-level').standing).toBe('cannot tell');
  });

  test('with one the checks answer from its trials', () => {
    const rows = reviewRows(EVALUATION, SIMULATION);
    const trials = [...SIMULATION.samples.total].toSorted((a, b) => a - b);
    const budget = bookBasis(EVALUATION).basis?.summary.budget?.cents ?? Number.NaN;
    const holds = (100 * trials.filter(cost => cost * 100 <= budget).length) / trials.length;
    // 80 in 100 of 400 trials: the 320th in rising order.
    const needed = Math.max(0, Math.round((trials[319] ?? Number.NaN) * 100) - total) / 100;
    const level = rowOf(rows, 'contingency-level');
    expect(level.evidence[0]).toContain(`holds in ${Math.floor(holds)} of 100 runs`);
    expect(level.evidence[0]?.replaceAll(',', '')).toContain(`contingency of $${needed.toFixed(2)}`);
    expect(level.standing).toBe(holds >= 70 ? 'met' : holds >= 50 ? 'partly' : 'not met');
    expect(rowOf(rows, 'sensitivity').standing).toBe('met');
    expect(rowOf(rows, 'schedule-risk').standing).toBe('met');
    const plan = Math.round(100 * (SIMULATION.finish.planShare ?? Number.NaN));
    expect(rowOf(rows, 'schedule-risk').evidence[0]).toContain(`${plan} of 100`);
    expect(rowOf(rows, 'uncertainty').evidence[0]).not.toBe('no simulation was run');
  });

  test('a larger contingency stands at a higher percentile', () => {
    const at = (value: string) => {
      const contingency = { policy: 'percentage' as const, share: { ...usd(value), unit: '1' } };
      const { basis } = bookBasis(evaluated({ ...BARE, contingency }));
      if (basis === undefined) throw new Error('the demo has its money');
      return reviewInput(basis, shippedBookRules().growth, SIMULATION).budgetPercentile ?? Number.NaN;
    };
    expect(at('0.9')).toBeGreaterThan(at('0.05'));
  });
});

describe('the record in the quality review', () => {
  const standing = (record: Partial<Record>, id: string) =>
    rowOf(reviewRows(withRecord(record)), id).standing;

  test('approval and the plan kept are met once they are written down', () => {
    expect(standing({}, 'approval')).toBe('not met');
    expect(standing({ approval: { by: 'County engineer', on: '2026-11-20' } }, 'approval')).toBe('met');
    expect(standing({}, 'baseline')).toBe('not met');
    expect(standing({ baseline: { keptOn: '2026-11-20', finish: '2029-07-01' } }, 'baseline')).toBe('met');
  });

  test('an independent estimate far off asks for an explanation', () => {
    const by = { by: 'Port office', on: '2026-11-10' };
    const near = usd((total / 100).toFixed(2));
    const far = usd((total / 50).toFixed(2));
    expect(standing({ independent: { ...by, total: near } }, 'independent')).toBe('met');
    expect(standing({ independent: { ...by, total: far } }, 'independent')).toBe('partly');
    const explained = { ...by, total: far, explanation: 'it strips the whole topside' };
    expect(standing({ independent: explained }, 'independent')).toBe('met');
  });

  test('the steps from the estimate before must come to this one, to the cent', () => {
    const earlier = (step: number) => ({
      on: '2026-06-01',
      total: usd((total / 100 - 1000).toFixed(2)),
      steps: [{ title: 'more cable', amount: usd(step.toFixed(2)) }],
    });
    expect(standing({ earlier: earlier(1000) }, 'variances')).toBe('met');
    expect(standing({ earlier: earlier(999.99) }, 'variances')).toBe('not met');
    expect(standing({ isFirstEstimate: true }, 'variances')).toBe('met');
    expect(standing({}, 'variances')).toBe('cannot tell');
  });

  test('a line worked out a second way is no longer among the unchecked, and a reason lets a float stand', () => {
    const [unchecked] = rowOf(reviewRows(EVALUATION), 'cross-checks').ids;
    const item = unchecked ?? '';
    const crossChecks = [{ item, amount: usd('1'), how: 'counted again' }];
    expect(rowOf(reviewRows(withRecord({ crossChecks })), 'cross-checks').ids).not.toContain(item);
    const [floating] = rowOf(reviewRows(EVALUATION), 'float').ids;
    const reasons = [{ item: floating ?? '', reason: 'may be done in any month of the yard' }];
    expect(rowOf(reviewRows(withRecord({ reasons })), 'float').ids).not.toContain(floating);
  });

  test('work that is finished asks for its lessons', () => {
    const done = evaluated({
      ...BARE,
      statusDate: '2027-03-01',
      items: [
        {
          item: 'source-screen',
          actualStart: '2027-01-04',
          actualFinish: '2027-01-08',
          note: 'done as planned',
        },
      ],
    });
    expect(rowOf(reviewRows(done), 'lessons').standing).toBe('not met');
    const lesson = { id: 'first', on: '2027-01-10', title: 'Papers were missing', lesson: 'ask earlier' };
    const record: Record = { crossChecks: [], leftOut: [], reasons: [], lessons: [lesson] };
    const learned = { ...done, project: { ...done.project, record } };
    expect(rowOf(reviewRows(learned), 'lessons').standing).toBe('met');
    expect(rowOf(reviewRows(EVALUATION), 'lessons').standing).toBe('met');
  });
});

describe('past hulls beside the estimate', () => {
  const view = historyView(EVALUATION);

  test('the recorded cases and their middle are those of the six hulls on record', () => {
    expect(view.cases.map(one => one.factor)).toEqual([0.84, 1.1, 1.23, 1.41, 1.51, 1.66]);
    expect(view.growth?.median).toBe(1.32);
    expect(view.cases[0]?.cost).toBe(Math.round(total * 0.84));
  });

  test('hulls alike stand in the money of the estimate, with the band that the review judges by', () => {
    const [hull] = view.likeHulls;
    expect(hull).toMatchObject({ sunkYear: 2009 });
    const isInside = total >= (view.band?.low ?? Number.NaN) && total <= (view.band?.high ?? Number.NaN);
    expect(rowOf(reviewRows(EVALUATION), 'history').standing === 'met').toBe(isInside);
  });

  test('is absent with the estimate', () => {
    const { estimate: _estimate, ...rest } = EVALUATION;
    const nothing = historyView(rest);
    expect(nothing.growth).toBeUndefined();
    expect(nothing.likeHulls).toEqual([]);
  });
});
