import { at, intAt } from '../../base';
import type { Links } from './plain-net';
import type { SearchProblem } from './problem';
import { orderOf } from './tails';

/** Largest networks in which the work behind every activity is summed: its time grows with the square of the size. */
const SUMMED_AT_MOST = 400;

/**
 * The least time between the finish of each activity and the end of the project: its longest path, or the work of
 * some activities that must follow it over the capacities with the least time behind them, whichever is more.
 */
export function leastAfter(problem: SearchProblem, before: Links, after: Links): Int32Array {
  const count = problem.activities.length;
  const order = orderOf(count, before, after);
  const least = new Int32Array(count);
  const followers = Array.from({ length: count }, () => new Set<number>());
  for (let k = order.length - 1; k >= 0; k--) {
    const activity = intAt(order, k);
    const all = at(followers, activity);
    for (let s = intAt(after.first, activity); s < intAt(after.first, activity + 1); s++) {
      const next = intAt(after.list, s);
      const path = intAt(least, next) + at(problem.activities, next).duration;
      least[activity] = Math.max(intAt(least, activity), path);
      if (count > SUMMED_AT_MOST) continue;
      all.add(next);
      for (const later of at(followers, next)) all.add(later);
    }
    least[activity] = Math.max(intAt(least, activity), daysToEnd(problem, all, least));
  }
  return least;
}

/**
 * Days that some activities take at least to the end of the project, by the resource that is shortest: those with
 * the most behind them first, their work over the capacity and what the last of them has behind it.
 */
function daysToEnd(problem: SearchProblem, activities: ReadonlySet<number>, least: Int32Array): number {
  let days = 0;
  const fromTheEnd = [...activities].sort((a, b) => intAt(least, b) - intAt(least, a));
  problem.resources.forEach(({ capacity }, r) => {
    let work = 0;
    for (const i of fromTheEnd) {
      const { duration, demands } = at(problem.activities, i);
      const own = duration * at(demands, r);
      work += own;
      if (own > 0) days = Math.max(days, Math.ceil(work / capacity) + intAt(least, i));
    }
  });
  return days;
}
