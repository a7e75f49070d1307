/**
 * The packed scheduling problem that the search solves. Time is counted in day slots: day `t` covers the
 * moment `t` to the moment `t + 1`, so an activity of three days that starts at 4 holds the days 4, 5, 6 and
 * finishes at the moment 7. All times are whole and lie between 0 and `horizon`. A caller keeps its own
 * table from dates to day slots and from its ids to the positions used here.
 *
 * Plain problems (no calendars, no maximum lags, only finish-to-start without lag) take a faster path by
 * themselves; nothing has to be said about it.
 */
export interface SearchProblem {
  /** The first moment no activity may reach beyond. Long enough for a poor schedule: all work in a row. */
  readonly horizon: number;
  readonly activities: readonly SearchActivity[];
  readonly resources: readonly SearchResource[];
  readonly relationships: readonly SearchRelationship[];
  /** Calendars in work-day index form, as {@link workDaysOf} makes them; activities and lags point here. */
  readonly calendars: readonly WorkDays[];
  readonly exclusions: readonly SearchExclusion[];
}

/** None of the first may run at the same time as any of the second, such as hot work beside a zone not gas-free. */
export interface SearchExclusion {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

export interface SearchActivity {
  /** Whole work days of its calendar, or day slots without a calendar. 0 for a milestone. */
  readonly duration: number;
  /** Position in `calendars`; absent: every day is a work day. Start and last day fall on work days. */
  readonly calendar?: number;
  /** Units of each resource held, one number a resource, in the order of `resources`. */
  readonly demands: readonly number[];
  /** It may not start before this moment. */
  readonly notBefore?: number;
  /** It must have finished by this moment (a hard limit). */
  readonly latestFinish?: number;
  /**
   * It starts here and nowhere else, and holds its resources there: work in progress or booked. What it holds
   * is taken off the capacities first, even where that leaves them below zero.
   */
  readonly fixedStart?: number;
  /**
   * `startAllowed[t] === 1` where it may start: for windows of consecutive days, such as a tow with its weather
   * allowance. `horizon` entries; absent: everywhere.
   */
  readonly startAllowed?: Uint8Array;
}

export interface SearchResource {
  /** Units at hand on every day, unless `capacityByDay` says otherwise. */
  readonly capacity: number;
  /** Units at hand day by day, `horizon` entries. */
  readonly capacityByDay?: ArrayLike<number>;
  /**
   * Whether an activity holds it on the idle days of the activity's calendar between its start and finish
   * too (a berth, a zone), not only on its work days (a crew). Absent: only on work days.
   */
  readonly isHeldOnIdleDays?: boolean;
}

/** What a relationship joins: the finish or the start of the one to the start or the finish of the other. */
export type RelationshipKind = 'FS' | 'SS' | 'FF' | 'SF';

/**
 * Let `a` be the moment of `from` that the kind names and `b` that of `to`, and `W(t)` the work days of the
 * lag's calendar before `t` (`W(t) = t` without one). The relationship demands
 * - minimum lag L: `W(b) - W(a) >= L`; for L = 0 plainly `b >= a`;
 * - maximum lag M: `W(b) - W(a) <= M`; for M = 0 plainly `b <= a`.
 */
export interface SearchRelationship {
  readonly from: number;
  readonly to: number;
  readonly kind: RelationshipKind;
  /** Absent: no minimum, which only makes sense beside a maximum. */
  readonly minimumLag?: number;
  readonly maximumLag?: number;
  /** Position in `calendars` for lags in work time; absent: lags in calendar days. */
  readonly calendar?: number;
}

/** One calendar as two index tables. */
export interface WorkDays {
  /** Work days before the moment `t`, for t = 0 to horizon: `horizon + 1` entries. */
  readonly indexOfDay: Int32Array;
  /** The day of each work day, in order. */
  readonly dayOfIndex: Int32Array;
}

/**
 * Index tables of a calendar.
 * @param isWorkDay one entry a day slot, 0 or false for an idle day; as long as the horizon.
 * @example `workDaysOf([1, 1, 0, 1])` has `indexOfDay` 0 1 2 2 3 and `dayOfIndex` 0 1 3.
 */
export function workDaysOf(isWorkDay: ArrayLike<number | boolean>): WorkDays {
  const indexOfDay = new Int32Array(isWorkDay.length + 1);
  const days: number[] = [];
  for (let day = 0; day < isWorkDay.length; day++) {
    indexOfDay[day] = days.length;
    if (isWorkDay[day]) days.push(day);
  }
  indexOfDay[isWorkDay.length] = days.length;
  return { indexOfDay, dayOfIndex: Int32Array.from(days) };
}

/** How much the search may spend, and who hears of it. */
export interface SearchOptions {
  /** Forward and backward passes to spend at most, each counting as one schedule. */
  readonly schedules: number;
  readonly seed: number;
  /** Asked now and then; true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: SearchProgress) => void;
  /** Do not look for an exact answer on small problems. For measuring the heuristic part alone. */
  readonly isHeuristicOnly?: boolean;
}

export interface SearchProgress {
  readonly schedules: number;
  /** Finish of the best schedule so far; absent while none keeps every limit. */
  readonly finish?: number;
  readonly lowerBound: number;
}

/**
 * `optimal`: no schedule finishes earlier. `feasible`: the finish is at most `finish - lowerBound` days above
 * the earliest. `infeasible`: proved that no schedule exists. `unknown`: none found, none excluded.
 */
export type SearchStatus = 'optimal' | 'feasible' | 'infeasible' | 'unknown';

export interface SearchResult {
  readonly status: SearchStatus;
  /** Start of each activity, absent when none was found. */
  readonly starts?: Int32Array;
  /** Finish moment of each activity. */
  readonly finishes?: Int32Array;
  /** The last finish. */
  readonly finish?: number;
  /** No schedule finishes before this moment. */
  readonly lowerBound: number;
  /** Forward and backward passes spent; partial passes count as the share of activities placed. */
  readonly schedules: number;
  /** For `infeasible` and `unknown`: what stands against each other. */
  readonly conflict?: SearchConflict;
}

/** Constraints that cannot hold together, as positions in the problem. The caller has the words. */
export interface SearchConflict {
  readonly kind:
    | 'demand above capacity'
    | 'loop of relationships'
    | 'no room between earliest start and latest finish'
    | 'no allowed start'
    | 'capacity exhausted'
    | 'no order of resources and lags';
  readonly activities: readonly number[];
  /** Positions in `relationships`. */
  readonly relationships: readonly number[];
  /** Positions in `resources`. */
  readonly resources: readonly number[];
}
