import { describe, expect, it } from 'vitest';
import { chainScheduler, schedule } from '../../../core/scheduling';
import { resourceChains } from '../../../core/scheduling/chains/resource-chains';
import { compile } from '../../../core/scheduling/compile/compile';
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
