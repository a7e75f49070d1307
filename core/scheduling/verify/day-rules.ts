import type { ScheduleActivity, ScheduleProblem } from '../model';
import type { Day } from './day-list';

/** Whether a day lies between two dates, or two days of the year; both ends count. */
export function isWithin(day: Day, span: { readonly from: string; readonly to: string }): boolean {
  if (span.from.length === 10) return span.from <= day.date && day.date <= span.to;
  const today = day.date.slice(5);
  // 29 February stands for the last of February.
  const from = span.from === '02-29' && day.year % 4 !== 0 ? '02-28' : span.from;
  return from <= span.to ? today >= from && today <= span.to : today >= from || today <= span.to;
}

/** Whether a calendar of the problem works on a day. */
export function isWorked(problem: ScheduleProblem, calendarId: string, day: Day): boolean {
  const calendar = problem.calendars[calendarId];
  if (!calendar) return false;
  if (calendar.extraWorkDays.includes(day.date)) return true;
  if (calendar.holidays.includes(day.date)) return false;
  if (calendar.federalHolidays && isFederalHoliday(day)) return false;
  if (calendar.closures.some(closure => isWithin(day, closure))) return false;
  return calendar.weekdays.some(weekday => weekday === day.weekday);
}

/**
 * Whether an activity with a crew may work on a day: calendars of its own and its resources, closures, windows.
 * @param isWorkedBy whether a calendar works on the day.
 */
export function mayWork(
  problem: ScheduleProblem,
  activity: ScheduleActivity,
  uses: Readonly<Record<string, number>>,
  day: Day,
  isWorkedBy: (calendarId: string) => boolean,
): boolean {
  const closed = (activity.closures ?? []).some(id => {
    const closure = problem.closures?.[id];
    return closure !== undefined && isWithin(day, closure);
  });
  if (closed) return false;
  if (
    activity.windows &&
    activity.windows.length > 0 &&
    !activity.windows.some(window => isWithin(day, window))
  )
    return false;
  if (activity.durationUnit === 'day') return true;
  if (!isWorkedBy(activity.calendar)) return false;
  return problem.resources.every(
    resource =>
      resource.calendar === undefined || !((uses[resource.id] ?? 0) > 0) || isWorkedBy(resource.calendar),
  );
}

/** What decides on which days an activity may work, as a text: the same text, the same days. */
export function workRules(
  problem: ScheduleProblem,
  { calendar, closures, windows, durationUnit }: ScheduleActivity,
  uses: Readonly<Record<string, number>>,
): string {
  const held = problem.resources.filter(r => r.calendar !== undefined && (uses[r.id] ?? 0) > 0);
  return JSON.stringify([calendar, closures, windows, durationUnit === 'day', held.map(r => r.id)]);
}

/** The observed federal holidays, told from the day alone. @source 5 U.S.C. 6103(a) and (b). */
function isFederalHoliday({ year, month, dayOfMonth: day, weekday }: Day): boolean {
  const monday = (first: number) => weekday === 1 && day >= first && day < first + 7;
  if (month === 1 && monday(15)) return true;
  if (month === 2 && monday(15)) return true;
  if (month === 5 && monday(25)) return true;
  if (month === 9 && monday(1)) return true;
  if (month === 10 && monday(8)) return true;
  if (month === 11 && weekday === 4 && day >= 22 && day < 29) return true;
  const fixed = [[1, 1], [7, 4], [11, 11], [12, 25], ...(year >= 2021 ? [[6, 19]] : [])];
  return fixed.some(([m, d = 0]) => {
    if (m !== month) return m === 1 && d === 1 && month === 12 && day === 31 && weekday === 5;
    const isOnIt = day === d && weekday <= 5;
    return isOnIt || (day === d - 1 && weekday === 5) || (day === d + 1 && weekday === 1);
  });
}
