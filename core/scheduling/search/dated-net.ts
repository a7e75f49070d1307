import { intAt } from '../../base';
import type { Quick } from './dated-quick';
import type { LastingOrders } from './ordered';
import type { Links } from './plain-net';

/** Index tables of one calendar along the axis of a {@link DatedNet}. */
export interface AxisCalendar {
  /** Work days before the moment `t`; one entry more than the axis has days. */
  readonly indexOfDay: Int32Array;
  readonly dayOfIndex: Int32Array;
}

/** What activities hold, as lists: the packed words of activity `i` from `first[i]` to `first[i + 1]`. */
export interface Uses {
  readonly first: Int32Array;
  readonly word: Int32Array;
  /** Packed units on work days and on idle days. */
  readonly work: Int32Array;
  readonly idle: Int32Array;
}

/** A resource to be watched: one of the problem, or one that stands for an exclusion. */
export interface Watched {
  readonly peak: number;
  /** Units of each activity. */
  readonly units: Int32Array;
  readonly capacityByDay: ArrayLike<number> | null;
  readonly isHeldOnIdleDays: boolean;
  /** Whether it stands for an exclusion: then its units are no measure of work. */
  readonly isExclusion: boolean;
}

/** Relationships that hold an activity back, as one list a field; those of `i` from `first[i]` to `first[i + 1]`. */
export interface Arcs {
  readonly first: Int32Array;
  /** The activity the relationship comes from. */
  readonly other: Int32Array;
  /** 1: counted from the other's finish; 2: counted to the own finish; the sum of both or 0. */
  readonly ends: Int32Array;
  readonly lag: Int32Array;
  /** Calendar of the lag, -1 without. */
  readonly calendar: Int32Array;
}

export const FROM_FINISH = 1;
export const TO_FINISH = 2;

/**
 * A network with calendars, dates and lags in one time direction. The axis of day slots has room before the
 * first and after the last day of the problem where every day is a work day with the largest capacities, so a
 * pass always places everything; what reaches there is late. In reversed time every table is mirrored.
 */
export interface DatedNet {
  readonly count: number;
  readonly durations: Int32Array;
  readonly predecessors: Links;
  readonly successors: Links;
  /** Minimum lags into each activity. */
  readonly minimums: Arcs;
  /**
   * Maximum lags, said as the start they demand of the activity they come from once the one they lead to is
   * placed: `maximums` lists them by the activity they lead to (`other` is the one to be moved), `pulls` by the
   * one they come from.
   */
  readonly maximums: Arcs;
  readonly pulls: Arcs;
  readonly hasMaximums: boolean;
  readonly needsRepair: boolean;
  /** Minimum lags of the plainest sort, finish to start in calendar days: whose finishes each activity waits for. */
  readonly waits: Arcs;
  /** All other minimum lags into each activity. */
  readonly lagged: Arcs;
  readonly calendars: readonly AxisCalendar[];
  /** The tables of all calendars one behind the other, `slots + 1` entries each. */
  readonly indexOfDay: Int32Array;
  readonly dayOfIndex: Int32Array;
  /** The activity's calendar; one of every day for those without. */
  readonly calendarOf: Int32Array;
  /** Earliest moment from `t` on where the activity may start, or null where its work days decide alone. */
  readonly nextStart: readonly (Int32Array | null)[];
  readonly words: number;
  /** Packed demand on work days and on idle days, `words` entries an activity. */
  readonly workDemands: Int32Array;
  readonly idleDemands: Int32Array;
  readonly uses: Uses;
  readonly quick: Quick;
  /** Capacities with guard bits, one stretch of `slots` days a word. */
  readonly template: Int32Array;
  readonly guards: Int32Array;
  /** The resources behind the words, and the orders that hold in any schedule. */
  readonly watched: readonly Watched[];
  readonly orders: LastingOrders;
  /** Day slots of the axis. */
  readonly slots: number;
  /** Moment the problem's day 0 (its horizon, in reversed time) begins. */
  readonly base: number;
  /** No earlier start; no later finish without being late; added to the finish for the objective. */
  readonly release: Int32Array;
  readonly due: Int32Array;
  readonly after: Int32Array;
  /** The only start, -1 without. */
  readonly fixed: Int32Array;
  readonly weights: Float64Array;
}

/** The finish of `duration` work days from the work day `start` on; beyond the axis, one moment behind it. */
export function finishOf({ indexOfDay, dayOfIndex }: AxisCalendar, start: number, duration: number): number {
  if (duration === 0) return start;
  return (dayOfIndex[intAt(indexOfDay, start) + duration - 1] ?? dayOfIndex.length - 1) + 1;
}

/** The earliest start, not yet a work day, whose finish is not before `finish`; the end of the axis for one beyond it. */
export function startFor(calendar: AxisCalendar, finish: number, duration: number): number {
  const slots = calendar.indexOfDay.length - 1;
  if (duration === 0 || finish <= 0 || finish > slots) return Math.min(Math.max(0, finish), slots);
  const last = intAt(calendar.indexOfDay, finish - 1);
  return last < duration ? 0 : intAt(calendar.dayOfIndex, last - duration + 1);
}

/**
 * The earliest moment with at least `lag` work days between `t` and it; negative lags reach back. Beyond the axis, one
 * moment behind it.
 */
export function shifted({ indexOfDay, dayOfIndex }: AxisCalendar, t: number, lag: number): number {
  const slots = indexOfDay.length - 1;
  if (lag === 0 || t > slots) return t;
  const index = intAt(indexOfDay, t) + lag;
  return index <= 0 ? 0 : (dayOfIndex[index - 1] ?? slots) + 1;
}
