import { dayOf } from '../../calendar';
import type { ScheduleActivity } from '../model';

/** How far an activity has come by the status date. */
export type ActivityState = 'planned' | 'begun' | 'finished';

/** From its actual dates alone. */
export function stateOf(activity: ScheduleActivity): ActivityState {
  if (activity.actualFinish !== undefined) return 'finished';
  return activity.actualStart !== undefined ? 'begun' : 'planned';
}

/** Actual start and finish as moments counted from `first`; the finish moment is the end of the last day. */
export function actualMoments(
  activity: ScheduleActivity,
  first: number,
): { start: number; finish?: number } | undefined {
  if (activity.actualStart === undefined) return undefined;
  const start = dayOf(activity.actualStart) - first;
  return activity.actualFinish === undefined
    ? { start }
    : { start, finish: dayOf(activity.actualFinish) - first + 1 };
}
