import { at } from '../../base';
import type { Compiled } from './compiled';

/** How much longer than the longest chain and the busiest resource together a poor schedule may be. */
const ROOM_FOR_POOR_SCHEDULES = 1.6;
/** A season missed once must come round again. */
const ROOM_FOR_A_MISSED_SEASON = 400;
const CALENDAR_DAYS_PER_WORK_DAY = 7 / 5;

/**
 * A shorter horizon that any sensible schedule keeps: the earliest finish by relationships and the days the busiest
 * resource needs, with ample room. Every table of the search is as long as the horizon, so this is what it costs.
 * When nothing is found in it, the full horizon must be tried.
 * @param earliestFinish the last of the earliest finishes, resources left aside.
 */
export function tightHorizon(compiled: Compiled, earliestFinish: number): number {
  const { search, problem } = compiled;
  const busiest = search.resources.reduce((most, { capacity }, r) => {
    const unitDays = search.activities.reduce((sum, a) => sum + a.duration * at(a.demands, r), 0);
    return Math.max(most, unitDays / Math.max(1, capacity));
  }, 0);
  const needed = earliestFinish + busiest * CALENDAR_DAYS_PER_WORK_DAY;
  const hasSeasons = problem.activities.some(a => a.consecutive ?? a.closures?.length ?? a.windows?.length);
  const room = hasSeasons ? ROOM_FOR_A_MISSED_SEASON : 0;
  return Math.min(search.horizon, Math.ceil(needed * ROOM_FOR_POOR_SCHEDULES) + room);
}
