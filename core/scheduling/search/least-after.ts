import { NONE } from './dice';
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
    const activity = order[k] ?? NONE;
    const all = followers[activity];
    for (let s = after.first[activity] ?? NONE; s < (after.first[activity + 1] ?? NONE); s++) {
      const next = after.list[s] ?? NONE;
      const path = (least[next] ?? NONE) + (problem.activities[next]?.duration ?? NONE);
      least[activity] = Math.max(least[activity] ?? NONE, path);
      if (count > SUMMED_AT_MOST) continue;
      all?.add(next);
      for (const later of followers[next] ?? []) all?.add(later);
    }
    least[activity] = Math.max(least[activity] ?? NONE, daysToEnd(problem, all ?? new Set(), least));
  }
  return least;
}

/**
 * Days that some activities take at least to the end of the project, by the resource that is shortest: those with
 * the most behind them first, their work over the capacity and what the last of them has behind it.
 */
function daysToEnd(problem: SearchProblem, activities: ReadonlySet<number>, least: Int32Array): number {
  let days = 0;
  const fromTheEnd = [...activities].sort((a, b) => (least[b] ?? NONE) - (least[a] ?? NONE));
  problem.resources.forEach(({ capacity }, r) => {
    let work = 0;
    for (const i of fromTheEnd) {
      const activity = problem.activities[i];
      const own = (activity?.duration ?? NONE) * (activity?.demands[r] ?? NONE);
      work += own;
      if (own > 0) days = Math.max(days, Math.ceil(work / capacity) + (least[i] ?? NONE));
    }
  });
  return days;
}
