import { scheduledActivities } from './explain/activities';
import { criticalChain } from './explain/critical-chain';
import { scheduledHammocks } from './explain/hammocks';
import { resourcePeaks, resourceProfiles, spanOf, workedDays } from './explain/profiles';
import { statePeriods } from './explain/state-periods';
import type { Placed } from './placed';
import type { ScheduledActivity, ScheduleResult } from './result';

/**
 * A placed schedule as an answer in dates and ids.
 * @param lowerBound a moment before which no schedule finishes.
 */
export function buildResult(placed: Placed, lowerBound: number, schedules: number): ScheduleResult {
  const span = spanOf(placed);
  const activities = scheduledActivities(placed);
  const gapDays = placed.finish - lowerBound;
  return {
    status: gapDays === 0 ? 'optimal' : 'feasible',
    calendarDays: placed.finish,
    lowerBoundDays: lowerBound,
    gapDays,
    gap: gapDays === 0 ? 0 : gapDays / Math.max(1, lowerBound),
    schedules,
    ...firstAndLastDay(activities),
    activities,
    hammocks: scheduledHammocks(placed, activities),
    resourcePeaks: resourcePeaks(placed, span),
    profiles: resourceProfiles(placed, span),
    zoneStates: statePeriods(placed),
    ...workedDays(placed, span),
    criticalChain: criticalChain(activities),
    findings: [],
  };
}

/** The first start and the last finish; absent without activities. */
function firstAndLastDay(activities: readonly ScheduledActivity[]): Pick<ScheduleResult, 'start' | 'finish'> {
  const first = activities[0];
  if (!first) return {};
  let { start, finish } = first;
  for (const activity of activities) {
    if (activity.start < start) start = activity.start;
    if (activity.finish > finish) finish = activity.finish;
  }
  return { start, finish };
}
