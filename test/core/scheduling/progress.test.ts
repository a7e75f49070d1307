import { describe, expect, it } from 'vitest';
import { compareBaseline, schedule, type ScheduleProblem } from '../../../core/scheduling';
import { dates, held, solved } from './dates';
import { after, problemOf, work } from './problems';

const plan = [work('A', 5), work('B', 5), work('C', 5)];
const chain = [after('A', 'B'), after('B', 'C')];

const sentences = (problem: ScheduleProblem) =>
  schedule(problem, { schedules: 10, seed: 1 }).findings.map(found => found.message);

describe('progress by hand', () => {
  it('what is not begun is planned from the status date on', () => {
    const problem = problemOf(plan, chain, { statusDate: '2027-03-10' });
    expect(dates(problem)).toEqual(['A 03-10/03-16', 'B 03-17/03-23', 'C 03-24/03-30']);
    expect(held(problem, 'A')).toEqual(['what is not done is planned from the status date 2027-03-10 on']);
  });
  it('what is finished stays as it happened, what is begun runs on for its remaining days', () => {
    const activities = [
      work('A', 5, { actualStart: '2027-03-01', actualFinish: '2027-03-08' }),
      work('B', 5, { actualStart: '2027-03-09', remaining: 6 }),
      work('C', 5),
    ];
    const problem = problemOf(activities, chain, { statusDate: '2027-03-11' });
    expect(dates(problem)).toEqual(['A 03-01/03-08', 'B 03-09/03-18', 'C 03-19/03-25']);
    const b = solved(problem).activities[1];
    expect([b?.resumed, b?.workDays]).toEqual(['2027-03-11', 8]);
  });
  it('without a stated rest, what has gone is taken off the plan', () => {
    const problem = problemOf(
      [work('A', 5, { actualStart: '2027-03-01' }), work('B', 1)],
      [after('A', 'B')],
      { statusDate: '2027-03-03' },
    );
    expect(dates(problem)).toEqual(['A 03-01/03-05', 'B 03-08/03-08']);
  });
  it('a lag after an actual start counts from that start', () => {
    const activities = [work('A', 9, { actualStart: '2027-03-01', remaining: 9 }), work('B', 1)];
    const problem = problemOf(activities, [after('A', 'B', { kind: 'SS', lag: 8 })], {
      statusDate: '2027-03-03',
    });
    expect(dates(problem)[1]).toBe('B 03-11/03-11');
  });
  it('work begun out of order finishes the rest only after what it should have waited for', () => {
    const activities = [
      work('A', 5, { actualStart: '2027-03-01', remaining: 4 }),
      work('B', 3, { actualStart: '2027-03-02', remaining: 2 }),
    ];
    const problem = problemOf(activities, [after('A', 'B')], { statusDate: '2027-03-03' });
    expect(dates(problem)).toEqual(['A 03-01/03-08', 'B 03-02/03-10']);
  });
  it('what is finished holds no crew any more, what is begun does', () => {
    const uses = { crew: 1 };
    const activities = [
      work('A', 5, { uses, actualStart: '2027-03-01', actualFinish: '2027-03-02' }),
      work('B', 5, { uses, actualStart: '2027-03-01', remaining: 2 }),
      work('C', 1, { uses }),
    ];
    const problem = problemOf(activities, [after('B', 'C', { kind: 'SS' })], {
      statusDate: '2027-03-03',
      resources: [{ id: 'crew', title: 'Crew', capacity: 1 }],
    });
    expect(dates(problem)[1]).toMatch(/B 03-01\/03-0[45]/);
    expect(solved(problem).finish).toBe('2027-03-05');
  });
  it('a milestone that has been reached stays on its day, and what follows waits for nothing more', () => {
    const activities = [
      work('Notice', 0, { actualStart: '2027-03-02', actualFinish: '2027-03-02' }),
      work('B', 2),
      work('Report', 0),
    ];
    const problem = problemOf(activities, [after('Notice', 'B'), after('B', 'Report')], {
      statusDate: '2027-03-04',
    });
    expect(dates(problem)).toEqual(['Notice 03-02/03-02', 'B 03-04/03-05', 'Report 03-05/03-05']);
  });
  it('of two pieces of work begun, the end of one still waits for the end of the other', () => {
    const activities = [
      work('A', 5, { actualStart: '2027-03-01', remaining: 4 }),
      work('B', 3, { actualStart: '2027-03-01', remaining: 1 }),
    ];
    const problem = problemOf(activities, [after('A', 'B', { kind: 'FF', lag: 1 })], {
      statusDate: '2027-03-03',
    });
    expect(dates(problem)).toEqual(['A 03-01/03-08', 'B 03-01/03-09']);
  });
  it('two that wait for the same actual start each count from it', () => {
    const activities = [
      work('A', 9, { actualStart: '2027-03-01', remaining: 9 }),
      work('B', 1),
      work('C', 1),
    ];
    const lags = [after('A', 'B', { kind: 'SS', lag: 8 }), after('A', 'C', { kind: 'SS', lag: 6 })];
    const problem = problemOf(activities, lags, { statusDate: '2027-03-03' });
    expect(dates(problem).slice(1)).toEqual(['B 03-11/03-11', 'C 03-09/03-09']);
  });
  it('a start that both have behind them joins nothing any more', () => {
    const activities = [
      work('A', 4, { actualStart: '2027-03-02', remaining: 2 }),
      work('B', 4, { actualStart: '2027-03-01', remaining: 2 }),
    ];
    const problem = problemOf(activities, [after('A', 'B', { kind: 'SS', lag: 20 })], {
      statusDate: '2027-03-03',
    });
    expect(dates(problem)).toEqual(['A 03-02/03-04', 'B 03-01/03-04']);
  });
  it('a deadline on a day that has gone says that it is missed, not that there is no schedule', () => {
    const problem = problemOf([work('A', 5, { deadline: '2027-03-03' })], [], { statusDate: '2027-03-10' });
    expect(sentences(problem)).toEqual(['A must finish by 2027-03-03, but cannot finish before 2027-03-16.']);
  });
  it('names work begun where its actual start leads past a deadline', () => {
    const activities = [
      work('A', 9, { actualStart: '2027-03-01', remaining: 9 }),
      work('B', 1, { deadline: '2027-03-09' }),
    ];
    const problem = problemOf(activities, [after('A', 'B', { kind: 'SS', lag: 8 })], {
      statusDate: '2027-03-03',
    });
    expect(sentences(problem)).toEqual([
      'B must finish by 2027-03-09, but work begun and B lead to 2027-03-11 at the earliest.',
    ]);
  });
  it('says from which day on a single piece of work cannot be in time', () => {
    const problem = problemOf([work('A', 5, { notBefore: '2027-03-08', deadline: '2027-03-10' })]);
    expect(sentences(problem)).toEqual([
      'A must finish by 2027-03-10, but cannot finish before 2027-03-12, begun no earlier than 2027-03-08.',
    ]);
  });
});

describe('baseline', () => {
  it('against a plan that could not be scheduled tells no shift of the finish', () => {
    const baseline = solved(problemOf(plan, chain));
    const none = schedule(problemOf([work('A', 5, { deadline: '2027-03-02' })]), { schedules: 10, seed: 1 });
    expect(none.finish).toBeUndefined();
    expect(compareBaseline(baseline, none)).toMatchObject({ removed: ['A', 'B', 'C'] });
    expect(compareBaseline(baseline, none)).not.toHaveProperty('finish');
  });

  it('says how far each activity and the finish have moved, what is new and what is gone', () => {
    const baseline = solved(problemOf(plan, chain));
    const current = solved(problemOf([work('A', 5), work('B', 7), work('D', 1)], [after('A', 'B')]));
    expect(compareBaseline(baseline, current)).toEqual({
      finish: -3,
      changed: [{ id: 'B', title: 'B', start: 0, finish: 4, workDays: 2 }],
      added: ['D'],
      removed: ['C'],
    });
    expect(compareBaseline(baseline, baseline)).toEqual({ finish: 0, changed: [], added: [], removed: [] });
  });
});
