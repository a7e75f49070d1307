import { describe, expect, it } from 'vitest';
import { searchSchedule, type SearchActivity, type SearchProblem } from '../../../core/scheduling/search';
import { boundNetOf } from '../../../core/scheduling/search/bounds/bound-net';
import { datedNetsOf } from '../../../core/scheduling/search/compile-dated';
import { DelaySearch } from '../../../core/scheduling/search/exact/delay-search';
import { LagPasses } from '../../../core/scheduling/search/lag-pass';
import { hasLoop, normalised } from '../../../core/scheduling/search/lags';
import { exhaustiveOptimum } from './exhaustive';
import { randomProblem } from './random-problem';
import { scheduleFaults } from './schedule-faults';

const task = (duration: number, more: Partial<SearchActivity> = {}): SearchActivity => ({
  ...{ duration, demands: [1], ...more },
});
const problemOf = (
  activities: readonly SearchActivity[],
  relationships: SearchProblem['relationships'],
): SearchProblem => ({
  ...{ horizon: 60, activities, relationships, calendars: [], exclusions: [] },
  resources: [{ capacity: 2 }],
});

/** A pass over the activities in their order; starts and finishes in days of the problem. */
function passed(problem: SearchProblem) {
  const [net] = datedNetsOf(problem, normalised(problem));
  const free = net.template.slice();
  const made = { starts: new Int32Array(net.count), finishes: new Int32Array(net.count), late: 0 };
  const cost = new LagPasses(net, free).pass(Int32Array.from(net.durations.keys()), net.base, made);
  const starts = [...made.starts].map(start => start - net.base);
  return { starts, late: made.late, cost };
}

describe('a pass with maximum lags', () => {
  it('moves the earlier activity when the later one cannot follow soon enough, and places both again', () => {
    // The second may start 2 days behind the end of the first at the latest, but not before day 9: 9 - 2 - 3 = 4.
    const problem = problemOf(
      [task(3), task(2, { notBefore: 9 })],
      [{ from: 0, to: 1, kind: 'FS', minimumLag: 0, maximumLag: 2 }],
    );
    // Two placements, back to the first, and two again: 4 of 2.
    expect(passed(problem)).toEqual({ starts: [4, 9], late: 0, cost: 2 });
  });

  it('leaves a fixed activity where it is, at once, and counts the days that are missing', () => {
    const problem = problemOf(
      [task(3, { fixedStart: 0 }), task(2, { notBefore: 9 })],
      [{ from: 0, to: 1, kind: 'FS', minimumLag: 0, maximumLag: 2 }],
    );
    expect(passed(problem)).toEqual({ starts: [0, 9], late: 4, cost: 1 });
  });

  it('that must be later than its fixed start lets it is late by as much', () => {
    const problem = problemOf(
      [task(5), task(2, { fixedStart: 3 })],
      [{ from: 0, to: 1, kind: 'FS', minimumLag: 0, maximumLag: 9 }],
    );
    expect(passed(problem)).toEqual({ starts: [0, 3], late: 2, cost: 1 });
  });

  it('pulls along what was placed before it in the list', () => {
    // The lag leads from the later in the list to the earlier: it starts at 6 - 1 at the soonest.
    const problem = problemOf(
      [task(2, { notBefore: 6 }), task(3)],
      [{ from: 1, to: 0, kind: 'SS', maximumLag: 1 }],
    );
    expect(passed(problem)).toEqual({ starts: [6, 5], late: 0, cost: 1 });
  });

  it('keeps every lag and capacity on random problems where it says that it is not late', () => {
    let [kept, moved] = [0, 0];
    for (let seed = 1; seed < 121; seed++) {
      const problem = randomProblem(seed, {
        activities: 7,
        hasKinds: true,
        hasMaximums: true,
        hasCalendars: seed % 2 === 0,
      });
      const { starts, late, cost } = passed(problem);
      if (late > 0) continue;
      kept++;
      if (cost > 1) moved++;
      expect({ seed, faults: scheduleFaults(problem, starts) }).toEqual({ seed, faults: [] });
    }
    expect(kept).toBeGreaterThan(40);
    expect(moved).toBeGreaterThan(10);
  });
});

describe('negative lags in a loop', () => {
  /** Random problems in which some must be over so many days before the start of one they do not lead to. */
  const looped = (seed: number): SearchProblem => {
    const problem = randomProblem(seed, { activities: 4 });
    const back = problem.relationships
      .filter((_, r) => r % 2 === seed % 2)
      .map(({ from, to }) => ({ from: to, to: from, kind: 'SS' as const, minimumLag: -4 - (seed % 4) }));
    return { ...problem, relationships: [...problem.relationships, ...back] };
  };

  it('are said the other way round, as maximum lags, so that the rest forms no loop', () => {
    const problem = problemOf(
      [task(3), task(2)],
      [
        { from: 0, to: 1, kind: 'FS', minimumLag: 0 },
        { from: 1, to: 0, kind: 'SF', minimumLag: -6 },
      ],
    );
    const lags = normalised(problem);
    expect(lags.map(({ from, to, kind, days, isMaximum }) => ({ from, to, kind, days, isMaximum }))).toEqual([
      { from: 0, to: 1, kind: 'FS', days: 0, isMaximum: false },
      { from: 0, to: 1, kind: 'FS', days: 6, isMaximum: true },
    ]);
    expect([
      hasLoop(2, lags),
      hasLoop(
        2,
        lags.map(lag => ({ ...lag, isMaximum: false, from: 1 - lag.to, to: lag.to })),
      ),
    ]).toEqual([false, false]);
  });

  it('stay as they are where there is no loop', () => {
    const problem = problemOf([task(3), task(2)], [{ from: 0, to: 1, kind: 'FS', minimumLag: -1 }]);
    expect(normalised(problem)).toMatchObject([{ from: 0, to: 1, days: -1, isMaximum: false }]);
  });

  it('hold in the shortest schedule that trying everything finds', () => {
    let found = 0;
    for (let seed = 1; seed < 31; seed++) {
      const problem = looped(seed);
      const result = searchSchedule(problem, { schedules: 2000, seed });
      const best = exhaustiveOptimum(problem, result.finish ?? 14);
      expect({ seed, finish: result.finish }).toEqual({ seed, finish: best });
      if (!result.starts) continue;
      found++;
      expect(scheduleFaults(problem, result.starts)).toEqual([]);
    }
    expect(found).toBeGreaterThan(10);
  });
});

describe('the search by delaying alternatives alone', () => {
  /** What it finds and proves when it is told nothing beforehand. */
  function searched(problem: SearchProblem, hasBounds: boolean, limit: number) {
    const nets = datedNetsOf(problem, normalised(problem));
    const found: number[] = [];
    const search = new DelaySearch(nets, {
      ...{ limit, below: nets[0].slots, shouldStop: () => false },
      bounds: hasBounds ? boundNetOf({ ...problem, relationships: [] }) : null,
      found: ({ starts, finishes }, last) => {
        expect(
          scheduleFaults(
            problem,
            starts.map(start => start - nets[0].base),
          ),
        ).toEqual([]);
        expect(last).toBe(Math.max(...finishes));
        found.push(last - nets[0].base);
      },
    });
    return { ...search.run(), found, best: found.at(-1) };
  }

  it('finds and proves the optimum that trying everything finds, each schedule shorter than the one before', () => {
    for (const ingredients of [
      { activities: 5 },
      { activities: 5, hasKinds: true },
      { activities: 4, hasCalendars: true, hasKinds: true },
      { activities: 4, hasKinds: true, hasMaximums: true, hasWindows: true, hasVaryingCapacity: true },
    ])
      for (let seed = 1; seed < 16; seed++) {
        const problem = randomProblem(seed, ingredients);
        const isConstant = !('hasCalendars' in ingredients) && !('hasWindows' in ingredients);
        const { isComplete, best, found } = searched(problem, isConstant, 20_000);
        expect({ seed, isComplete, best }).toEqual({
          seed,
          isComplete: true,
          best: exhaustiveOptimum(problem, best ?? 14),
        });
        expect(found).toEqual([...new Set(found)].sort((a, b) => b - a));
      }
  });

  it('takes far fewer steps where the rules on constant capacities help it', () => {
    let [helped, alone] = [0, 0];
    for (let seed = 1; seed < 31; seed++) {
      const problem = randomProblem(seed, { activities: 9, hasKinds: true });
      const [one, other] = [searched(problem, true, 4000), searched(problem, false, 4000)];
      helped += one.spent;
      alone += other.spent;
      if (one.isComplete && other.isComplete) expect(one.best).toBe(other.best);
    }
    expect(helped).toBeLessThan(0.5 * alone);
  });

  it('stops when its schedules are spent, and claims no proof', () => {
    const problem = randomProblem(4, { activities: 14, hasKinds: true });
    const { isComplete, spent } = searched(problem, false, 6);
    expect(isComplete).toBe(false);
    expect(spent).toBeGreaterThanOrEqual(6);
    expect(spent).toBeLessThan(10);
  });
});
