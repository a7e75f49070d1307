import { describe, expect, it } from 'vitest';
import { compareBaseline } from '../../../core/scheduling';
import { dates, held, solved } from './dates';
import { after, problemOf, work } from './problems';

const plan = [work('A', 5), work('B', 5), work('C', 5)];
const chain = [after('A', 'B'), after('B', 'C')];

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
});

describe('baseline', () => {
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
