import { dayOf } from '../../calendar';
import { at } from '../../base';
import { datesOfMoments } from '../compile/dates';
import type { Compiled } from '../compile/compiled';
import type { Placed } from '../placed';
import type { ScheduledActivity } from '../result';
import { latestStarts } from './floats';
import { holdingsOf } from './holdings';
import { underWay } from './under-way';

/** Every activity with its dates, floats and what holds it. */
export function scheduledActivities(placed: Placed): ScheduledActivity[] {
  const { compiled, starts } = placed;
  const latest = latestStarts(placed);
  const days = underWay(placed);
  return compiled.problem.activities.map((given, i) => {
    const { crew, mode } = at(compiled.activities, i);
    const totalFloat = openDaysBetween(compiled, i, at(starts, i), at(latest.total, i));
    return {
      id: given.id,
      title: given.title,
      ...datesOf(placed, i),
      crewSize: crew.crewSize,
      mode,
      totalFloat,
      freeFloat: openDaysBetween(compiled, i, at(starts, i), at(latest.free, i)),
      critical: totalFloat === 0,
      heldBy: holdingsOf(placed, days, i),
    };
  });
}

/** First and last day, and the work days between. */
function datesOf(
  placed: Placed,
  activity: number,
): Pick<ScheduledActivity, 'start' | 'finish' | 'workDays' | 'resumed'> {
  const { compiled } = placed;
  const given = at(compiled.problem.activities, activity);
  const { isMilestone, state } = at(compiled.activities, activity);
  const [start, finish] = [at(placed.starts, activity), at(placed.finishes, activity)];
  const dates = datesOfMoments(compiled, activity, start, finish);
  if (isMilestone) return { ...dates, workDays: 0 };
  if (state !== 'begun' || given.actualStart === undefined) {
    return { ...dates, workDays: openDaysBetween(compiled, activity, start, finish) };
  }
  const begun = dayOf(given.actualStart) - compiled.first;
  return {
    start: given.actualStart,
    finish: dates.finish,
    resumed: dates.start,
    workDays: openDaysBetween(compiled, activity, begun, finish),
  };
}

/** Days between two moments on which an activity can work. */
export function openDaysBetween(compiled: Compiled, activity: number, from: number, to: number): number {
  const { indexOfDay } = at(compiled.activities, activity).open.table;
  return at(indexOfDay, to) - at(indexOfDay, from);
}
