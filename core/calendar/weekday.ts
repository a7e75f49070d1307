import { at } from '../base';
import type { DayNumber } from './iso-date';

/** Day of the week, 1 Monday to 7 Sunday. @source ISO 8601-1:2019, 3.1.2.11. */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

const WEEKDAYS: readonly Weekday[] = [1, 2, 3, 4, 5, 6, 7];

/** The day of the week of a day; 1970-01-01 was a Thursday. */
export function weekdayOf(day: DayNumber): Weekday {
  return at(WEEKDAYS, (((day + 3) % 7) + 7) % 7);
}

/** The nth (1 first, -1 last) given weekday of a month, as a day of that month counted from its first day number. */
export function nthWeekday(
  firstOfMonth: DayNumber,
  length: number,
  weekday: Weekday,
  nth: number,
): DayNumber {
  const first = firstOfMonth + ((weekday - weekdayOf(firstOfMonth) + 7) % 7);
  if (nth > 0) return first + 7 * (nth - 1);
  const last = first + 7 * Math.floor((firstOfMonth + length - 1 - first) / 7);
  return last + 7 * (nth + 1);
}
