import { describe, expect, it } from 'vitest';
import { schedule, verifySchedule, type ScheduleProblem } from '../../../core/scheduling';
import { reachOf } from '../../../core/scheduling/compile/zone-states';
import { isWorked } from '../../../core/scheduling/verify/day-rules';
import { listDays } from '../../../core/scheduling/verify/day-list';
import { after, problemOf, work } from './problems';

const options = { schedules: 30, seed: 1 };
const faultsOf = (problem: ScheduleProblem) =>
  verifySchedule(problem, schedule(problem, options)).map(({ message }) => message);

describe('the day-by-day check of a plan by the scheduler finds nothing', () => {
  it('where what is named last is over months before the rest', () => {
    // 100 work days of five a week from Monday 1 March are 20 weeks: they end on Friday 16 July.
    const problem = problemOf([work('long', 100), work('short', 1)]);
    expect(schedule(problem, options).finish).toBe('2027-07-16');
    expect(faultsOf(problem)).toEqual([]);
  });

  it('where a milestone goes with the start of work that follows other work', () => {
    const problem = problemOf(
      [work('A', 2), work('B', 2), work('begun', 0), work('done', 0)],
      [
        after('A', 'B'),
        after('B', 'begun', { kind: 'SS', maximumLag: 0 }),
        after('B', 'done', { maximumLag: 0 }),
      ],
    );
    const dates = schedule(problem, options).activities.map(({ id, start }) => `${id} ${start}`);
    // A lasts Monday and Tuesday, B Wednesday and Thursday: it begins on the 3rd and is done on the 4th.
    expect(dates).toEqual(['A 2027-03-01', 'B 2027-03-03', 'begun 2027-03-03', 'done 2027-03-04']);
    expect(faultsOf(problem)).toEqual([]);
  });

  it('where milestones follow each other, each closing the day that the first closes', () => {
    const problem = problemOf(
      [work('A', 2), work('one', 0), work('two', 0), work('B', 1)],
      [after('A', 'one'), after('one', 'two', { maximumLag: 0 }), after('two', 'B')],
    );
    const dates = schedule(problem, options).activities.map(({ id, start }) => `${id} ${start}`);
    expect(dates).toEqual(['A 2027-03-01', 'one 2027-03-02', 'two 2027-03-02', 'B 2027-03-03']);
    expect(faultsOf(problem)).toEqual([]);
  });
});

describe('the day-by-day check', () => {
  it('tells a hammock whose last activity has no dates as one without an end', () => {
    const problem = problemOf([work('A', 2), work('B', 2)], [after('A', 'B')], {
      hammocks: [{ id: 'berth', title: 'Berth', fromStartOf: ['A'], toFinishOf: ['B'], calendar: 'five' }],
    });
    const good = schedule(problem, options);
    const found = verifySchedule(problem, { ...good, activities: good.activities.slice(0, 1) });
    expect(found.map(({ code }) => code)).toEqual(
      ['missing', 'finish', 'bound', 'hammock'].map(code => `verify/${code}`),
    );
  });

  it('takes a calendar that is not there for one on which nobody works', () => {
    const [day] = listDays('2027-03-01', '2027-03-01');
    if (!day) throw new Error('a day is missing');
    const problem = problemOf([]);
    expect([isWorked(problem, 'five', day), isWorked(problem, 'none', day)]).toEqual([true, false]);
  });
});

describe('what comes before what', () => {
  it('is found through others, and also where relationships go round', () => {
    const { reach, order } = reachOf(5, [
      [0, 1],
      [1, 2],
      [0, 3],
      [3, 2],
    ]);
    const reached = [0, 1, 2, 3, 4].map(from => [0, 1, 2, 3, 4].filter(to => reach(from, to)));
    expect(reached).toEqual([[1, 2, 3], [2], [], [2], []]);
    expect(order.indexOf(0)).toBeLessThan(order.indexOf(1));
    expect(order.indexOf(3)).toBeLessThan(order.indexOf(2));
    const round = reachOf(3, [
      [0, 1],
      [1, 0],
      [1, 2],
    ]);
    expect([round.order, round.reach(0, 2), round.reach(0, 0), round.reach(2, 0)]).toEqual([
      [],
      true,
      true,
      false,
    ]);
  });
});

describe('what cannot hold together', () => {
  it('is told as a matter of the most lag where one is among it', () => {
    const problem = problemOf(
      [
        work('Tow', 2, { calendar: 'all', windows: [{ from: '2027-03-01', to: '2027-03-10' }] }),
        work('Sinking', 2, { calendar: 'all', closures: ['birds'] }),
      ],
      [after('Tow', 'Sinking', { maximumLag: 3, lagUnit: 'day' })],
      { closures: { birds: { id: 'birds', title: 'Nesting season', from: '2027-03-01', to: '2027-06-30' } } },
    );
    const { infeasible } = schedule(problem, options);
    expect(infeasible?.map(({ kind, relationships }) => [kind, relationships])).toEqual([
      ['maximum-lag', [0]],
    ]);
  });
});
