import { isoOf } from '../calendar';
import { scheduledActivities } from './explain/activities';
import { criticalChain } from './explain/critical-chain';
import { scheduledHammocks } from './explain/hammocks';
import { resourcePeaks, resourceProfiles, spanOf, workedDays } from './explain/profiles';
import { statePeriods } from './explain/state-periods';
import type { Placed } from './placed';
import type { ScheduleResult } from './result';

/**
 * A placed schedule as an answer in dates and ids.
 * @param lowerBound a moment before which no schedule finishes.
 */
export function buildResult(placed: Placed, lowerBound: number, schedules: number): ScheduleResult {
  const span = spanOf(placed);
  const activities = scheduledActivities(placed);
  const gapDays = placed.finish - lowerBound;
  const { first } = placed.compiled;
  return {
    status: gapDays === 0 ? 'optimal' : 'feasible',
    calendarDays: placed.finish,
    lowerBoundDays: lowerBound,
    gapDays,
    gap: gapDays === 0 ? 0 : gapDays / Math.max(1, lowerBound),
    schedules,
    ...(activities.length === 0
      ? {}
      : { start: isoOf(first + span.from), finish: isoOf(first + Math.max(span.from, span.to - 1)) }),
    activities,
    hammocks: scheduledHammocks(placed),
    resourcePeaks: resourcePeaks(placed, span),
    profiles: resourceProfiles(placed, span),
    zoneStates: statePeriods(placed),
    ...workedDays(placed, span),
    criticalChain: criticalChain(activities),
    findings: [],
  };
}
