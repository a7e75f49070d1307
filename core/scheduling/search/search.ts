import { isPlain } from './compile-plain';
import { normalised } from './lags';
import { conflictOnSight } from './preflight';
import type { SearchOptions, SearchProblem, SearchResult } from './problem';
import { searchDated } from './search-dated';
import { searchPlain } from './search-plain';

/**
 * Schedules a problem for the earliest finish: lower bounds first, then a genetic search over forward and backward
 * passes and, in small networks, an exact search. Deterministic for a seed and a number of schedules, unless the
 * caller stops it.
 * @returns the best schedule found, what is proved about it, or what stands in the way of any.
 */
export function searchSchedule(problem: SearchProblem, options: SearchOptions): SearchResult {
  const lags = normalised(problem);
  const conflict = conflictOnSight(problem, lags);
  if (conflict) return { status: 'infeasible', lowerBound: 0, schedules: 0, conflict };
  if (problem.activities.length === 0) {
    const none = new Int32Array(0);
    return { status: 'optimal', starts: none, finishes: none, finish: 0, lowerBound: 0, schedules: 0 };
  }
  return isPlain(problem) ? searchPlain(problem, options) : searchDated(problem, lags, options);
}
