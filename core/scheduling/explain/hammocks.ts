import { dayOf, isoOf, dayFlags } from '../../calendar';
import type { Placed } from '../placed';
import type { Hammock } from '../model';
import type { ScheduledHammock } from '../result';
import { datesOf } from './activities';

/** The spans that follow activities: first start to last finish, in work days and calendar days. */
export function scheduledHammocks(placed: Placed): ScheduledHammock[] {
  return (placed.compiled.problem.hammocks ?? []).flatMap(hammock => spanOfHammock(placed, hammock) ?? []);
}

function spanOfHammock(placed: Placed, hammock: Hammock): ScheduledHammock | undefined {
  const { problem, position } = placed.compiled;
  const calendar = problem.calendars[hammock.calendar];
  if (!calendar || hammock.fromStartOf.length === 0 || hammock.toFinishOf.length === 0) return undefined;
  const datesOfId = (id: string) => datesOf(placed, position.get(id) ?? 0);
  const start = Math.min(...hammock.fromStartOf.map(id => dayOf(datesOfId(id).start)));
  const finish = Math.max(...hammock.toFinishOf.map(id => dayOf(datesOfId(id).finish)));
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
