import type { SearchProblem } from '../../../core/scheduling/search';
import { finishDay, scheduleFaults } from './schedule-faults';

/**
 * The earliest last finish by trying every start of every activity, in order, up to a given one; undefined when
 * there is no schedule. Only for the smallest problems. Nothing of the search is used: each activity is checked
 * against those before it by {@link scheduleFaults}, and pairs that cannot go together are remembered.
 */
export function exhaustiveOptimum(problem: SearchProblem, upTo: number): number | undefined {
  const count = problem.activities.length;
  const fits = pairTable(problem, upTo);
  const starts: number[] = [];
  let best = upTo + 1;
  const extend = (i: number, last: number): void => {
    if (last >= best) return;
    if (i === count) {
      if (scheduleFaults(problem, starts).length === 0) best = last;
      return;
    }
    for (let start = 0; start < best; start++) {
      const finish = finishDay(problem, i, start);
      if (finish >= best) break;
      if (!fits(i, start, starts)) continue;
      starts[i] = start;
      extend(i + 1, Math.max(last, finish));
      starts.length = i;
    }
  };
  extend(0, 0);
  return best > upTo ? undefined : best;
}

/** Whether activity `i` at `start` goes with each of those before it, two at a time, found once for each pair. */
function pairTable(problem: SearchProblem, upTo: number) {
  const known = new Map<number, boolean>();
  const size = upTo + 2;
  const fitsPair = (i: number, start: number, j: number, other: number): boolean => {
    const key = ((i * problem.activities.length + j) * size + start) * size + other;
    let fits = known.get(key);
    if (fits === undefined) {
      fits = scheduleFaults(pairOf(problem, j, i), [other, start]).length === 0;
      known.set(key, fits);
    }
    return fits;
  };
  return (i: number, start: number, starts: readonly number[]): boolean =>
    starts.every((other, j) => fitsPair(i, start, j, other));
}

/** The problem of two activities alone. */
function pairOf(problem: SearchProblem, a: number, b: number): SearchProblem {
  const place = (i: number): number => (i === a ? 0 : 1);
  const isBoth = (i: number, j: number): boolean => [i, j].every(k => k === a || k === b);
  return {
    ...problem,
    activities: [a, b].map(i => problem.activities[i]).filter(activity => activity !== undefined),
    relationships: problem.relationships
      .filter(({ from, to }) => isBoth(from, to))
      .map(link => ({ ...link, from: place(link.from), to: place(link.to) })),
    exclusions: problem.exclusions.map(({ first, second }) => ({
      first: first.filter(i => isBoth(i, i)).map(place),
      second: second.filter(i => isBoth(i, i)).map(place),
    })),
  };
}
