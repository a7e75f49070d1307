import { describe, expect, it } from 'vitest';
import { at, randomStream } from '../../../core/base';
import {
  chainScheduler,
  schedule,
  type ScheduleProblem,
  type ScheduleRelationship,
} from '../../../core/scheduling';
import { after, problemOf, work } from './problems';

const KINDS = ['FS', 'SS', 'FF', 'SF'] as const;

/** Work on every day of the week, with some kinds of relationships and lags, and milestones or first days of its own. */
function randomNetwork(
  seed: number,
  kinds: readonly (typeof KINDS)[number][],
  has: { readonly firstDays?: boolean; readonly milestones?: boolean } = {},
): ScheduleProblem {
  const random = randomStream(seed, 'driving');
  const below = (n: number) => Math.floor(random() * n);
  const count = 4 + below(5);
  const activities = Array.from({ length: count }, (_, i) => {
    const days = below(6) === 0 && has.milestones === true ? 0 : 1 + below(5);
    const hasFirstDay = below(4) === 0 && days > 0 && has.firstDays === true;
    const more = hasFirstDay ? { notBefore: `2027-03-0${1 + below(8)}` } : {};
    return work(`${i}`, days, { calendar: 'all', ...more });
  });
  const relationships = Array.from({ length: count + 2 }, (): ScheduleRelationship => {
    const from = below(count - 1);
    const to = from + 1 + below(count - from - 1);
    return after(`${from}`, `${to}`, {
      kind: at(kinds, below(kinds.length)),
      lag: below(2) * below(4),
      lagUnit: 'day',
    });
  });
  return problemOf(activities, relationships);
}

/** Dates in days from the first, what drives the finish by the definition, and what is counted as driving it. */
function trial(problem: ScheduleProblem) {
  const plan = schedule(problem, { schedules: 10, seed: 1 });
  const chains = chainScheduler(problem, plan);
  if (!chains) throw new Error('chains tell every plan without resources');
  const days = problem.activities.map(activity => activity.workDays ?? 0);
  const column = () => problem.activities.map(() => new Float64Array(1));
  const run = (durations: readonly number[]) => {
    const trials = {
      ...{ n: 1, durations: durations.map(d => Float64Array.of(d)) },
      ...{ starts: column(), finishes: column(), finish: new Float64Array(1) },
    };
    chains.chunk(trials);
    const counts = new Float64Array(problem.activities.length);
    chains.countDriving(trials, counts);
    const starts = trials.starts.map(values => at(values, 0));
    return { starts, finish: at(trials.finish, 0), counts: [...counts] };
  };
  return { days, run };
}

const position = (id: string): number => Number(id);
const dayOf = (date: string | undefined): number => (date === undefined ? 0 : Number(date.slice(8)) - 1);

/** The start that a relationship demands, from the dates of the one before. */
function demanded(r: ScheduleRelationship, days: readonly number[], starts: readonly number[]): number {
  const [from, to] = [position(r.from), position(r.to)];
  const moment = at(starts, from) + (r.kind.startsWith('F') ? at(days, from) : 0) + (r.lag ?? 0);
  return r.kind.endsWith('F') ? moment - at(days, to) : moment;
}

describe('what drives the finish', () => {
  it('is what finishes last, and backwards what held the start of those that drive it', () => {
    let [driving, others] = [0, 0];
    for (let seed = 1; seed < 201; seed++) {
      const problem = randomNetwork(seed, KINDS, { firstDays: true });
      const { days, run } = trial(problem);
      const { starts, finish, counts } = run(days);
      const drives = days.map((d, i) => at(starts, i) + d === finish);
      for (let to = days.length - 1; to >= 0; to--) {
        const start = at(starts, to);
        // On the first day of all nobody has waited; on a first day of its own it waits for those who end then, too.
        if (!drives[to] || start === 0) continue;
        for (const r of problem.relationships)
          if (position(r.to) === to && demanded(r, days, starts) === start) drives[position(r.from)] = true;
      }
      expect({ seed, counts }).toEqual({ seed, counts: drives.map(Number) });
      driving += drives.filter(Boolean).length;
      others += drives.filter(is => !is).length;
    }
    expect(Math.min(driving, others)).toBeGreaterThan(200);
  });

  it('starts as early as relationships and its own first day let it', () => {
    for (let seed = 1; seed < 101; seed++) {
      const problem = randomNetwork(seed, KINDS, { firstDays: true, milestones: true });
      const { days, run } = trial(problem);
      const longer = days.map((d, i) => (d === 0 ? 0 : d + ((i + seed) % 3)));
      const { starts } = run(longer);
      problem.activities.forEach(({ notBefore }, i) => {
        const moments = problem.relationships
          .filter(r => position(r.to) === i)
          .map(r => demanded(r, longer, starts));
        expect(starts[i]).toBe(Math.max(dayOf(notBefore), 0, ...moments));
      });
    }
  });

  it('delays the finish by a day when it takes a day longer, and nothing else does', () => {
    for (let seed = 1; seed < 101; seed++) {
      const problem = randomNetwork(seed, ['FS']);
      const { days, run } = trial(problem);
      const { finish, counts } = run(days);
      days.forEach((d, i) => {
        if (d === 0) return;
        const later = run(days.map((other, j) => (j === i ? other + 1 : other))).finish;
        expect(later - finish).toBe(counts[i]);
      });
    }
  });

  it('is counted over trials together as one by one, and not where there is no finish', () => {
    const problem = problemOf(
      [
        work('0', 3, { calendar: 'all' }),
        work('1', 2, { calendar: 'all' }),
        work('2', 1, { calendar: 'all' }),
      ],
      [after('0', '2'), after('1', '2')],
    );
    const chains = chainScheduler(problem, schedule(problem, { schedules: 10, seed: 1 }));
    const columns = () => [0, 1, 2].map(() => new Float64Array(4));
    // The first is longer, the second is, both are as long, and the last trial has no days for the third.
    const durations = [
      [3, 1, 2, 3],
      [2, 4, 2, 3],
      [1, 1, 1, Number.NaN],
    ].map(values => Float64Array.from(values));
    const trials = { n: 4, durations, starts: columns(), finishes: columns(), finish: new Float64Array(4) };
    chains?.chunk(trials);
    const counts = new Float64Array(3);
    chains?.countDriving(trials, counts);
    expect([...trials.finish]).toEqual([4, 5, 3, Number.NaN]);
    expect([...counts]).toEqual([2, 2, 3]);
    chains?.countDriving(trials, counts);
    expect([...counts]).toEqual([4, 4, 6]);
  });
});

describe('a crew that goes from one piece of work to the next', () => {
  const yard = (crew: number, relationships: readonly ScheduleRelationship[] = []) =>
    problemOf(
      ['0', '1', '2'].map(id => work(id, 2, { calendar: 'all', uses: { crew: 1 } })),
      relationships,
      { resources: [{ id: 'crew', title: 'Crew', capacity: crew }] },
    );
  const finishOf = (problem: ScheduleProblem, days: readonly number[]) => trial(problem).run(days).finish;

  it('lets each wait for the one before, as many at once as there are', () => {
    // One crew: 5 + 2 + 4 days one after the other. Three: the longest alone. Two: one waits for one of the others.
    expect(finishOf(yard(1), [5, 2, 4])).toBe(11);
    expect(finishOf(yard(3), [5, 2, 4])).toBe(5);
    expect([5 + 2, 5 + 4, 2 + 4]).toContain(finishOf(yard(2), [5, 2, 4]));
  });

  it('waits also where a relationship lets the next begin sooner, or counts to another end', () => {
    expect(finishOf(yard(1, [after('0', '1', { lag: -1, lagUnit: 'day' })]), [5, 2, 4])).toBe(11);
    expect(
      finishOf(yard(1, [after('0', '1', { kind: 'SS' }), after('1', '2', { kind: 'FF' })]), [5, 2, 4]),
    ).toBe(11);
    expect(finishOf(yard(1, [after('0', '1'), after('1', '2')]), [5, 2, 4])).toBe(11);
  });
});
