import { describe, expect, it } from 'vitest';
import { chainScheduler, schedule } from '../../../core/scheduling';
import { resourceChains } from '../../../core/scheduling/chains/resource-chains';
import { compile } from '../../../core/scheduling/compile/compile';
import { tightHorizon } from '../../../core/scheduling/compile/tight-horizon';
import { layLanes } from '../../../core/scheduling/search/lanes';
import { horizonDays } from '../../../core/scheduling/compile/horizon';
import { listDays } from '../../../core/scheduling/verify/day-list';
import type { SearchProblem } from '../../../core/scheduling/search';
import { after, problemOf, work } from './problems';

const options = { schedules: 30, seed: 1 };

describe('the order in which units pass on', () => {
  /** Two activities of one unit each, then a third of some units; the third follows some of them. */
  const chains = (units: number, follows: readonly number[], finishes: readonly number[], capacity = 2) => {
    const problem: SearchProblem = {
      horizon: 40,
      activities: finishes.map((finish, i) => ({
        duration: i < 2 ? finish : 1,
        demands: [i < 2 ? 1 : units],
      })),
      relationships: follows.map(from => ({ from, to: 2, kind: 'FS', minimumLag: 0 })),
      resources: [{ capacity }],
      calendars: [],
      exclusions: [],
    };
    const starts = Int32Array.from(finishes, (finish, i) => (i < 2 ? 0 : finish - 1));
    return resourceChains(problem, starts, Int32Array.from(finishes));
  };

  it('is by way of those that the next one follows anyway, so that nothing new is asked', () => {
    expect(chains(1, [0], [2, 5, 8])).toEqual([]);
    expect(chains(1, [1], [5, 2, 8])).toEqual([]);
    expect(chains(2, [0, 1], [2, 5, 8])).toEqual([]);
  });

  it('is otherwise from the one that has been free for the shortest time, and from all when all are needed', () => {
    expect(chains(1, [], [2, 5, 8])).toEqual([[1, 2]]);
    expect(chains(1, [], [5, 2, 8])).toEqual([[0, 2]]);
    expect(chains(2, [], [2, 5, 8])).toEqual([
      [1, 2],
      [0, 2],
    ]);
    expect(chains(2, [0], [2, 5, 8])).toEqual([[1, 2]]);
  });

  it('begins with units that nobody held', () => {
    expect(chains(1, [], [2, 5, 8], 3)).toEqual([]);
    expect(chains(2, [], [2, 5, 8], 3)).toEqual([[1, 2]]);
  });
});

describe('dates that stand', () => {
  const problem = problemOf(
    ['0', '1', '2', '3', '4'].map(id => work(id, 2, { calendar: 'all' })),
    [after('0', '1'), after('1', '2', { lag: 1, lagUnit: 'day' }), after('3', '4')],
  );
  const chains = chainScheduler(problem, schedule(problem, options));
  const columns = () => problem.activities.map(() => new Float64Array(1));

  it('stay, whatever they are, where nothing before them is new, and are found anew where something is', () => {
    // 0 leads to 1 and, a day later, to 2; 3 leads to 4. Of each, by which dates are new, the starts expected.
    const run = (isNew: readonly boolean[]) => {
      const durations = [3, 2, 2, 2, 2].map(days => Float64Array.of(days));
      const starts = columns().map(() => Float64Array.of(70));
      const finishes = columns().map(() => Float64Array.of(72));
      const trials = { n: 1, durations, starts, finishes, finish: new Float64Array(1) };
      chains?.chunk({ ...trials, stands: i => isNew[i] !== true });
      return starts.map(column => column[0]);
    };
    expect(run([true, false, false, false, false])).toEqual([0, 3, 6, 70, 70]);
    // The second follows the first that stands until day 72: it is new then, and so is what follows it.
    expect(run([false, true, false, false, false])).toEqual([70, 72, 75, 70, 70]);
    expect(run([false, false, true, false, false])).toEqual([70, 70, 73, 70, 70]);
    expect(run([false, false, false, false, true])).toEqual([70, 70, 70, 70, 72]);
    expect(run([false, false, false, false, false])).toEqual([70, 70, 70, 70, 70]);
    expect(run([true, true, true, true, true])).toEqual([0, 3, 6, 0, 2]);
  });
});

describe('small things', () => {
  it('a problem without zone states has no spells and no orders by them', () => {
    const compiled = compile(problemOf([work('A', 2), work('B', 2)], [after('A', 'B')]));
    expect([compiled.spells, compiled.search.relationships.length]).toEqual([[], 1]);
  });

  it('the days laid out are those to the last date, and from there all work in a row, with room for holidays', () => {
    // Ten work days of five a week are 10 * 7.4 / 5 = 14.8 calendar days, with one more 15.8; 30 are for holidays.
    expect(horizonDays(problemOf([work('A', 10)]))).toBe(46);
    // Seven days a week 7.4 / 7 each: 11.57; calendar days are one each: 11. Lags count twice.
    expect(horizonDays(problemOf([work('A', 10, { calendar: 'all' })]))).toBe(42);
    expect(horizonDays(problemOf([work('A', 10, { durationUnit: 'day' })]))).toBe(41);
    expect(
      horizonDays(
        problemOf([work('A', 0), work('B', 0)], [after('A', 'B', { lag: 4 }), after('A', 'B', { lag: -3 })]),
      ),
    ).toBe(1 + 1 + 8 + 30);
    // Until 31 March there are 30 days; a capacity that changes until 10 April makes it 40.
    const dated = [work('A', 0, { deadline: '2027-03-31' })];
    expect(horizonDays(problemOf(dated))).toBe(30 + 1 + 30);
    const capacityChanges = [{ from: '2027-03-01', to: '2027-04-10', capacity: 1 }];
    expect(
      horizonDays(
        problemOf(dated, [], { resources: [{ id: 'c', title: 'C', capacity: 2, capacityChanges }] }),
      ),
    ).toBe(40 + 1 + 30);
    // What may be missed once must come round again: 800 days.
    const consecutive = { weatherDays: 2 };
    expect(horizonDays(problemOf([work('A', 3, { durationUnit: 'day', consecutive })]))).toBe(
      5 + 1 + 30 + 800,
    );
  });

  it('a shorter horizon has room for the earliest finish and the busiest resource, and more than half as much again', () => {
    const crew = (capacity: number) =>
      compile(
        problemOf(
          Array.from({ length: 6 }, (_, i) => work(`${i}`, 10, { calendar: 'all', uses: { crew: 1 } })),
          [],
          { resources: [{ id: 'crew', title: 'Crew', capacity }] },
        ),
      );
    // 60 unit days for three are 20 days, at 7 / 5 calendar days 28; with the 10 of the longest 38, times 1.6: 60.8.
    expect(tightHorizon(crew(3), 10)).toBe(61);
    // For one 84 and 10 are 94, times 1.6 are 150.4: more than all in a row.
    const one = crew(1);
    expect(tightHorizon(one, 10)).toBe(Math.min(151, one.search.horizon));
  });

  it('a critical chain goes by the first of those that finish last alike, by one without float before one with', () => {
    const ends = [work('A', 3), work('B', 3), work('C', 2)];
    expect(schedule(problemOf(ends), options).criticalChain).toEqual(['A']);
    expect(schedule(problemOf(ends.toReversed()), options).criticalChain).toEqual(['B']);
  });

  it('a capacity that fits no word of 32 bits with its guard is refused', () => {
    expect(() => layLanes([2 ** 31])).toThrow('does not fit a lane');
    expect(() => layLanes([-1])).toThrow('does not fit a lane');
    expect(() => layLanes([1.5])).toThrow('does not fit a lane');
    expect([...layLanes([3, 2 ** 30, 4]).wordOf]).toEqual([0, 1, 0]);
  });

  it('an idle weekend inside a window is a matter of the calendar, days before the window one of the window', () => {
    const windows = [{ from: '2027-03-03', to: '2027-03-31' }];
    const problem = problemOf(
      [work('A', 5), work('B', 2, { windows }), work('C', 1, { windows })],
      [after('A', 'B')],
    );
    const holdings = (id: string) =>
      schedule(problem, options)
        .activities.find(activity => activity.id === id)
        ?.heldBy.map(({ kind }) => kind);
    // A lasts from Monday to Friday: B waits for it, and over the weekend; C starts with the window on Wednesday.
    expect(holdings('B')).toContain('calendar');
    expect(holdings('B')).not.toContain('window');
    expect(holdings('C')).toContain('window');
    expect(holdings('C')).not.toContain('calendar');
  });

  it('the last day of February is the 28th, of years that four divides the 29th, but not of most centuries', () => {
    const lastOf = (year: number) => listDays(`${year}-02-27`, `${year}-03-01`).at(-2)?.date;
    expect([2027, 2028, 2000, 2100].map(lastOf)).toEqual([
      '2027-02-28',
      '2028-02-29',
      '2000-02-29',
      '2100-02-28',
    ]);
  });

  it('work that follows other work with no open day left behind it says what cannot hold together', () => {
    const problem = problemOf(
      [
        work('Cleaning', 20, { calendar: 'all' }),
        work('Tow', 2, { calendar: 'all', windows: [{ from: '2027-03-01', to: '2027-03-10' }] }),
      ],
      [after('Cleaning', 'Tow')],
    );
    expect(schedule(problem, options).infeasible?.map(({ kind, sentence }) => [kind, sentence])).toEqual([
      ['no-room', 'These cannot hold together: Tow after Cleaning finishes.'],
    ]);
  });
});
