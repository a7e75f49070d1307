import { dayOf, isoOf, dayFlags } from '../../calendar';
import { at, known } from '../../base';
import type { Placed } from '../placed';
import type { Hammock } from '../model';
import type { ScheduledActivity, ScheduledHammock } from '../result';

/**
 * The spans that follow activities: first start to last finish, in work days and calendar days.
 * @param activities those of the problem with their dates, in its order.
 */
export function scheduledHammocks(
  placed: Placed,
  activities: readonly ScheduledActivity[],
): ScheduledHammock[] {
  const { hammocks = [] } = placed.compiled.problem;
  return hammocks.flatMap(hammock => spanOfHammock(placed, activities, hammock) ?? []);
}

function spanOfHammock(
  placed: Placed,
  activities: readonly ScheduledActivity[],
  hammock: Hammock,
): ScheduledHammock | undefined {
  const { problem, position } = placed.compiled;
  const calendar = problem.calendars[hammock.calendar];
  if (!calendar || hammock.fromStartOf.length === 0 || hammock.toFinishOf.length === 0) return undefined;
  const datesOf = (id: string) => at(activities, known(position, id));
  const start = Math.min(...hammock.fromStartOf.map(id => dayOf(datesOf(id).start)));
  const finish = Math.max(...hammock.toFinishOf.map(id => dayOf(datesOf(id).finish)));
  const calendarDays = Math.max(0, finish - start + 1);
  return {
    id: hammock.id,
    title: hammock.title,
    start: isoOf(start),
    finish: isoOf(finish),
    workDays: dayFlags(calendar, start, calendarDays).reduce((sum, flag) => sum + flag, 0),
    calendarDays,
  };
}
