import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { at, randomStream } from '../../../core/base';
import { sumOfSquares, unitsHired, verifySchedule, type ScheduleProblem } from '../../../core/scheduling';
import { buildResult } from '../../../core/scheduling/build-result';
import { isLess, LevelState, type LevelCost } from '../../../core/scheduling/level/level-state';
import { LEVELLING_OBJECTIVES, type LevellingKind } from '../../../core/scheduling/level/objective';
import { Profile } from '../../../core/scheduling/level/profile';
import { usableDays } from '../../../core/scheduling/level/uses';
import { placeAll, type Placed } from '../../../core/scheduling/placed';
import { prepare } from '../../../core/scheduling/schedule';
import { finishFrom, NEVER } from '../../../core/scheduling/time';
import { randomProblem } from './random-problems';

const KINDS: readonly LevellingKind[] = ['squares', 'peak', 'hire-and-release'];
/** Days after the finish that levelling may use too. */
const MORE = 3;
const PROBLEMS = 60;

/** Random problems with a schedule of each. */
const placedProblems = fc
  .sample(randomProblem(6, 3, true, true), { numRuns: PROBLEMS, seed: 20270501 })
  .flatMap((problem): { problem: ScheduleProblem; placed: Placed }[] => {
    const { placed } = prepare(problem, { schedules: 40, seed: 1 });
    return placed === undefined ? [] : [{ problem, placed }];
  })
  .slice(0, 24);

/** The cost of a schedule counted anew, day by day. */
function costOf(placed: Placed, last: number, kind: LevellingKind, weights: readonly number[]): LevelCost {
  const cost = { figure: 0, squares: 0 };
  weights.forEach((weight, resource) => {
    if (weight === 0) return;
    const usable = usableDays(placed, resource, last);
    const units = [...usable.keys()]
      .filter(day => usable[day] === 1)
      .map(day =>
        placed.compiled.search.activities.reduce((sum, { demands }, i) => {
          const isUnderWay = at(placed.starts, i) <= day && day < at(placed.finishes, i);
          return sum + (isUnderWay && placed.book.holds(i, resource, day) ? at(demands, resource) : 0);
        }, 0),
      );
    const figures = {
      squares: sumOfSquares(units),
      peak: Math.max(0, ...units),
      'hire-and-release': unitsHired(units),
    };
    cost.figure += weight * figures[kind];
    cost.squares += weight * figures.squares;
  });
  return cost;
}

/** Whether the day-by-day check finds nothing wrong when one activity starts elsewhere and the last moment is kept. */
function isKept(problem: ScheduleProblem, placed: Placed, i: number, start: number, last: number): boolean {
  const finish = finishFrom(placed.compiled.search, i, start);
  if (finish >= NEVER || finish > last) return false;
  const [starts, finishes] = [placed.starts.slice(), placed.finishes.slice()];
  [starts[i], finishes[i]] = [start, finish];
  const moved = placeAll(placed.compiled, starts, finishes);
  return verifySchedule(problem, buildResult(moved, 0, 1)).length === 0;
}

describe('a profile of use', () => {
  it('knows squares, hired units and peak after every change as counted anew, over the usable days alone', () => {
    for (let seed = 1; seed < 31; seed++) {
      const random = randomStream(seed, 'profile');
      const below = (n: number) => Math.floor(random() * n);
      const usable = Uint8Array.from({ length: 9 }, () => +(random() < 0.7));
      const profile = new Profile(usable);
      const units = new Array<number>(9).fill(0);
      for (let k = 0; k < 60; k++) {
        const day = below(9);
        const change = Math.max(-at(units, day), below(7) - 3);
        profile.add(day, change);
        units[day] = usable[day] === 1 ? at(units, day) + change : 0;
        const used = units.filter((_, d) => usable[d] === 1);
        expect([profile.squares, profile.hired, profile.peak]).toEqual([
          sumOfSquares(used),
          unitsHired(used),
          Math.max(0, ...used),
        ]);
      }
    }
  });
});

describe('costs of levelled schedules', () => {
  it('are compared by the figure first, then by the squares', () => {
    const cost = (figure: number, squares: number) => ({ figure, squares });
    expect(isLess(cost(1, 9), cost(2, 1))).toBe(true);
    expect(isLess(cost(2, 1), cost(1, 9))).toBe(false);
    expect(isLess(cost(1, 1), cost(1, 2))).toBe(true);
    expect(isLess(cost(1, 2), cost(1, 2))).toBe(false);
  });
});

describe('moves of levelling', () => {
  it('can go wherever the day-by-day check finds nothing wrong, and nowhere else', () => {
    let places = 0;
    for (const { problem, placed } of placedProblems) {
      const last = placed.finish + MORE;
      const state = new LevelState(
        placeAll(placed.compiled, placed.starts, placed.finishes),
        last,
        LEVELLING_OBJECTIVES.squares,
        problem.resources.map(() => 1),
      );
      for (const i of state.movable()) {
        const { flags } = at(placed.compiled.activities, i).open;
        const isMoment = at(placed.compiled.search.activities, i).duration === 0;
        const kept = Array.from({ length: last + 1 }, (_, start) => start).filter(
          start => (isMoment || flags[start] === 1) && isKept(problem, placed, i, start, last),
        );
        const options = state.options(i);
        if (!isMoment) expect({ i, options }).toEqual({ i, options: kept });
        else expect(options.filter(start => !kept.includes(start))).toEqual([]);
        places += options.length;
      }
      expect([...state.placed.starts]).toEqual([...placed.starts]);
    }
    expect(places).toBeGreaterThan(200);
  });

  it('settle at the cheapest place, the first or the last of equal ones, and the cost is as counted anew', () => {
    let moved = 0;
    for (const [n, { problem, placed }] of placedProblems.entries()) {
      const last = placed.finish + MORE;
      const kind = at(KINDS, n % 3);
      const weights = problem.resources.map((_, r) => (n + r) % 3);
      const state = new LevelState(
        placeAll(placed.compiled, placed.starts, placed.finishes),
        last,
        LEVELLING_OBJECTIVES[kind],
        weights,
      );
      const random = randomStream(n, 'moves');
      const now = () => costOf(state.placed, last, kind, weights);
      for (let k = 0; k < 12; k++) {
        const movable = state.movable();
        if (movable.length === 0) break;
        const i = at(movable, Math.floor(random() * movable.length));
        const options = state.options(i);
        state.put(i, at(options, Math.floor(random() * options.length)));
        expect(state.cost()).toEqual(now());
        const before = state.placed.starts.slice();
        const costs = options.map(start => {
          state.put(i, start);
          return { start, cost: now() };
        });
        state.restore(before);
        expect([...state.placed.starts]).toEqual([...before]);
        expect(state.cost()).toEqual(now());
        const cheapest = costs.filter(({ cost }) => !costs.some(other => isLess(other.cost, cost)));
        const prefersLater = k % 2 === 1;
        const hasMoved = state.settle(i, prefersLater);
        const wanted = at(cheapest, prefersLater ? cheapest.length - 1 : 0).start;
        expect(state.placed.starts[i]).toBe(wanted);
        expect(hasMoved).toBe(wanted !== before[i]);
        expect(state.cost()).toEqual(now());
        if (hasMoved) moved++;
      }
    }
    expect(moved).toBeGreaterThan(20);
  });

  it('share a resource with those that use one that is levelled too, themselves left out', () => {
    for (const { problem, placed } of placedProblems) {
      for (const weights of [problem.resources.map(() => 1), problem.resources.map((_, r) => r)]) {
        const state = new LevelState(
          placeAll(placed.compiled, placed.starts, placed.finishes),
          placed.finish,
          LEVELLING_OBJECTIVES.peak,
          weights,
        );
        const { activities } = placed.compiled.search;
        activities.forEach(({ demands }, i) => {
          const shared = [...activities.keys()].filter(
            j =>
              j !== i &&
              weights.some(
                (weight, r) => weight > 0 && at(demands, r) > 0 && at(at(activities, j).demands, r) > 0,
              ),
          );
          expect(state.sharers(i)).toEqual(shared);
        });
      }
    }
  });
});
