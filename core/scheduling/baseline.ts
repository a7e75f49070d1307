import { dayOf } from '../calendar';
import type { ScheduleResult } from './result';

/** How far an activity has moved against the baseline, in calendar days; later is positive. */
export interface BaselineChange {
  readonly id: string;
  readonly title: string;
  readonly start: number;
  readonly finish: number;
  /** Work days more (or fewer) than in the baseline. */
  readonly workDays: number;
}

export interface BaselineComparison {
  /** Calendar days the finish of the project has moved; absent when one of the two has none. */
  readonly finish?: number;
  /** Activities that moved or changed length, the greatest move of a finish first. */
  readonly changed: readonly BaselineChange[];
  /** Ids only in the current schedule, and only in the baseline. */
  readonly added: readonly string[];
  readonly removed: readonly string[];
}

/** A schedule beside the one that was approved: what has moved, what is new, what is gone. */
export function compareBaseline(baseline: ScheduleResult, current: ScheduleResult): BaselineComparison {
  const before = new Map(baseline.activities.map(activity => [activity.id, activity]));
  const now = new Set(current.activities.map(activity => activity.id));
  const changed = current.activities.flatMap(activity => {
    const old = before.get(activity.id);
    if (!old) return [];
    const change = {
      id: activity.id,
      title: activity.title,
      start: dayOf(activity.start) - dayOf(old.start),
      finish: dayOf(activity.finish) - dayOf(old.finish),
      workDays: activity.workDays - old.workDays,
    };
    return change.start === 0 && change.finish === 0 && change.workDays === 0 ? [] : [change];
  });
  const isKnown = baseline.finish !== undefined && current.finish !== undefined;
  return {
    ...(isKnown ? { finish: dayOf(current.finish) - dayOf(baseline.finish) } : {}),
    changed: changed.sort((a, b) => Math.abs(b.finish) - Math.abs(a.finish)),
    added: current.activities.flatMap(activity => (before.has(activity.id) ? [] : [activity.id])),
    removed: baseline.activities.flatMap(activity => (now.has(activity.id) ? [] : [activity.id])),
  };
}
