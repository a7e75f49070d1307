import { describe, expect, it } from 'vitest';
import { searchSchedule, type SearchProblem } from '../../../core/scheduling/search';
import { boundNetOf, criticalPath } from '../../../core/scheduling/search/bounds/bound-net';
import { windowsFor } from '../../../core/scheduling/search/bounds/windows';
import { plainNetOf } from '../../../core/scheduling/search/compile-plain';
import { Clauses } from '../../../core/scheduling/search/learning/clauses';
import { LearningSearch, luby } from '../../../core/scheduling/search/learning/learning-search';
import { UrgentCuts } from '../../../core/scheduling/search/learning/urgent-cuts';
import { randomStream } from '../../../core/base';
import { exhaustiveOptimum } from './exhaustive';
import { randomProblem } from './random-problem';
import { scheduleFaults } from './schedule-faults';

/** One after the other, in the order of the numbers: relationships lead from smaller to larger ones. */
function oneByOne(problem: SearchProblem): { starts: Int32Array; end: number } {
  let end = 0;
  const starts = Int32Array.from(problem.activities, ({ duration }) => {
    end += duration;
    return end - duration;
  });
  return { starts, end };
}

/** Runs the learning search alone, from everything in a row. */
function learned(problem: SearchProblem, limit: number) {
  const net = boundNetOf(problem);
  const { starts, end } = oneByOne(problem);
  const found: { last: number; faults: readonly unknown[] }[] = [];
  const windowsUpTo = (moment: number) => (moment < criticalPath(net) ? null : windowsFor(net, moment));
  const windows = windowsUpTo(end - 1);
  if (!windows) return { isComplete: true, spent: 0, found, best: end };
  const search = new LearningSearch(plainNetOf(problem), net, windows, starts, {
    limit,
    shouldStop: () => false,
    windowsFor: windowsUpTo,
    found: (better, last) => found.push({ last, faults: scheduleFaults(problem, better) }),
  });
  const outcome = search.run();
  return { ...outcome, found, best: found.at(-1)?.last ?? end };
}

/** The shortest way through one machine, of all orders: days before, on the machine and behind it of each. */
function shortestOnOneMachine(days: readonly number[]): number {
  const count = days.length / 3;
  const finishFrom = (left: readonly number[], machine: number, last: number): number => {
    if (left.length === 0) return last;
    return Math.min(
      ...left.map(i => {
        const [before = 0, own = 0, behind = 0] = days.slice(3 * i, 3 * i + 3);
        const free = Math.max(machine, before) + own;
        const others = left.filter(other => other !== i);
        return finishFrom(others, free, Math.max(last, free + behind));
      }),
    );
  };
  return finishFrom([...new Array<number>(count).keys()], 0, 0);
}

describe('the learning search alone', () => {
  it('finds and proves the optimum that trying everything finds', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const problem = randomProblem(seed, { activities: 5 });
      const { end } = oneByOne(problem);
      const { best, isComplete, found } = learned(problem, 20_000);
      expect({ seed, best, isComplete }).toEqual({
        seed,
        best: exhaustiveOptimum(problem, end),
        isComplete: true,
      });
      expect(found.flatMap(({ faults }) => faults)).toEqual([]);
    }
  });

  it('agrees with the search by delaying alternatives on networks of 10 activities and three resources', () => {
    let [tried, differing] = [0, 0];
    for (let seed = 1; seed <= 40; seed++) {
      tried++;
      const problem = randomProblem(seed, { activities: 10, resources: 3 });
      const { best, isComplete, found } = learned(problem, 50_000);
      // A date that changes nothing makes the problem one for the search with dates.
      const activities = problem.activities.map(activity => ({ ...activity, notBefore: 0 }));
      const other = searchSchedule({ ...problem, activities }, { schedules: 50_000, seed });
      expect({ seed, best, isComplete }).toEqual({ seed, best: other.finish, isComplete: true });
      expect(other.status).toBe('optimal');
      expect(found.flatMap(({ faults }) => faults)).toEqual([]);
      if (found.length > 1) differing++;
    }
    expect(differing).toBeGreaterThanOrEqual(0.25 * tried);
  });

  it('proves nothing that a schedule found otherwise refutes, on networks of 20 activities', () => {
    let [tried, proved] = [0, 0];
    for (let seed = 1; seed <= 60; seed++) {
      tried++;
      const problem = randomProblem(seed, { activities: 20, resources: 4 });
      const { best, isComplete } = learned(problem, 5000);
      const other = searchSchedule(problem, { schedules: 500, seed, isHeuristicOnly: true });
      if (isComplete) expect({ seed, best: Math.min(best, other.finish ?? 0) }).toEqual({ seed, best });
      if (isComplete) proved++;
    }
    expect(proved).toBeGreaterThanOrEqual(0.5 * tried);
  });

  it('uses several words for many resources', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const problem = randomProblem(seed, { activities: 5, resources: 12 });
      expect(plainNetOf(problem).words).toBeGreaterThan(1);
      const { best, isComplete } = learned(problem, 20_000);
      expect({ seed, best, isComplete }).toEqual({
        seed,
        best: exhaustiveOptimum(problem, oneByOne(problem).end),
        isComplete: true,
      });
    }
  });

  it('each schedule it hands out is shorter than the one before', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const ends = learned(randomProblem(seed, { activities: 14, resources: 3 }), 50_000).found.map(
        f => f.last,
      );
      expect(ends).toEqual([...new Set(ends)].sort((a, b) => b - a));
    }
  });

  it('finds the best order of work on one machine, of all orders there are', () => {
    // Six on one machine, each between a piece of work before and one behind it that waits for nothing else.
    for (let seed = 1; seed < 11; seed++) {
      const random = randomStream(seed, 'one machine');
      const days = (most: number) => 1 + Math.floor(random() * most);
      const own = Array.from({ length: 6 }, () => [days(12), days(4), days(12)]).flat();
      const problem: SearchProblem = {
        horizon: 200,
        activities: own.map((duration, i) => ({ duration, demands: [i % 3 === 1 ? 1 : 0] })),
        relationships: own.flatMap((_, i) =>
          i % 3 === 2 ? [] : [{ from: i, to: i + 1, kind: 'FS' as const, minimumLag: 0 }],
        ),
        resources: [{ capacity: 1 }],
        calendars: [],
        exclusions: [],
      };
      const outcome = learned(problem, 20_000);
      expect(outcome.isComplete).toBe(true);
      expect(outcome.best).toBe(shortestOnOneMachine(own));
    }
  });

  it('stops when its schedules are spent, and then claims no proof', () => {
    const problem = randomProblem(3, { activities: 40, resources: 4 });
    const { isComplete, spent } = learned(problem, 5);
    expect(isComplete).toBe(false);
    expect(spent).toBeGreaterThanOrEqual(5);
    expect(spent).toBeLessThan(50);
  });
});

describe('runs between fresh starts', () => {
  it('have the lengths of Luby, Sinclair and Zuckerman, Information Processing Letters 47 (1993) 173-180', () => {
    const lengths = Array.from({ length: 15 }, (_, k) => luby(k + 1));
    expect(lengths).toEqual([1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]);
  });
});

describe('urgent cuts', () => {
  it('come out by falling score', () => {
    const random = randomStream(1, 'urgent cuts');
    const cuts = new UrgentCuts(50);
    const scores = new Float64Array(50);
    let weight = 1;
    for (let k = 0; k < 400; k++) {
      const cut = Math.floor(random() * 50);
      cuts.raise(cut);
      scores[cut] = (scores[cut] ?? 0) + weight;
      if (k % 7 !== 0) continue;
      cuts.fade();
      weight /= 0.9;
    }
    const order = Array.from({ length: 50 }, () => scores[cuts.take()] ?? NaN);
    expect(order).toEqual([...scores].sort((a, b) => b - a));
    expect(cuts.take()).toBe(-1);
  });

  it('come back when they are returned, those never raised do not', () => {
    const cuts = new UrgentCuts(4);
    cuts.raise(2);
    expect(cuts.take()).toBe(2);
    cuts.returnAll(0, 4);
    expect([cuts.take(), cuts.take()]).toEqual([2, -1]);
  });

  it('keep their order when scores would become too large', () => {
    const cuts = new UrgentCuts(3);
    cuts.raise(1);
    for (let k = 0; k < 5000; k++) cuts.fade();
    cuts.raise(0);
    cuts.fade();
    cuts.raise(2);
    expect([cuts.take(), cuts.take()]).toEqual([2, 0]);
  });
});

describe('learned clauses', () => {
  const literals = (clauses: Clauses): number[][] =>
    Array.from({ length: clauses.count }, (_, c) => [
      ...clauses.literals.subarray(clauses.starts[c], clauses.starts[c + 1]),
    ]);

  it('of many, those of few levels and the last used stay; what holds anyway or never is left out', () => {
    const clauses = new Clauses(100);
    clauses.add([0, 3, 5], 3, 2, 1);
    clauses.add([7, 8, 9], 3, 9, 1);
    clauses.add([11, 12, 13], 3, 5, 4);
    clauses.add([14, 15], 2, 5, 9);
    clauses.add([20, 21, 22], 3, 2, 9);
    clauses.shrink(literal => (literal === 3 ? -1 : literal === 20 ? 1 : 0));
    expect(literals(clauses)).toEqual([
      [0, 5],
      [14, 15],
    ]);
    expect(clauses.heads[5]).toBe(1);
    expect(clauses.heads[9]).toBe(-1);
  });

  it('of which some are dropped and some become shorter stay as they were otherwise, each watched by its first two', () => {
    for (let seed = 1; seed < 41; seed++) {
      const random = randomStream(seed, 'clauses');
      const below = (n: number) => Math.floor(random() * n);
      const clauses = new Clauses(60);
      const given = Array.from({ length: 5 + below(20) }, (_, c) => {
        const start = below(30);
        const literals = Array.from({ length: 4 + below(4) }, (__, k) => start + 3 * k + below(3));
        const [spread, now] = [1 + below(6), below(5)];
        clauses.add(literals, literals.length, spread, now);
        return { c, literals, spread, now };
      });
      const values = Array.from({ length: 60 }, () => (below(9) === 0 ? 1 : below(7) === 0 ? -1 : 0));
      // At least two literals of a clause are open where nothing rests on it.
      for (const { literals } of given) for (const literal of literals.slice(0, 2)) values[literal] = 0;
      const half = given
        .slice()
        .sort((a, b) => a.spread - b.spread || b.now - a.now || a.c - b.c)
        .filter(({ spread }, place) => place < given.length / 2 || spread <= 2);
      const kept = half
        .sort((a, b) => a.c - b.c)
        .filter(({ literals: some }) => !some.some(literal => values[literal] === 1))
        .map(({ literals: some }) => some.filter(literal => values[literal] === 0));
      clauses.shrink(literal => values[literal] ?? 0);
      expect(literals(clauses)).toEqual(kept);
      for (let literal = 0; literal < 60; literal++) {
        const watching: number[] = [];
        for (let watch = clauses.heads[literal] ?? -1; watch >= 0; watch = clauses.next[watch] ?? -1)
          watching.push(watch);
        const wanted = kept.flatMap(([first, second], c) => [
          ...(first === literal ? [2 * c] : []),
          ...(second === literal ? [2 * c + 1] : []),
        ]);
        expect(watching.sort((a, b) => a - b)).toEqual(wanted);
      }
    }
  });

  it('more than there is room for at first are all kept', () => {
    const clauses = new Clauses(6000);
    for (let c = 0; c < 2900; c++) clauses.add([c, c + 1, c + 2, c + 3, c + 4, c + 5, c + 6, c + 7], 8, 3, 0);
    expect(literals(clauses)[2899]).toEqual([2899, 2900, 2901, 2902, 2903, 2904, 2905, 2906]);
    expect(clauses.count).toBe(2900);
  });
});
