import type { DayNumber } from './iso-date';
import { weekdayOf } from './weekday';

/**
 * The latest day to give notice of work so that `workingDays` working days lie before its start. A working day
 * here is every Monday to Friday, holidays included: the count of the notice rule, not a project calendar.
 * @param start first day of the work.
 * @source 40 CFR 61.141 ("working day means Monday through Friday and includes holidays that fall on any of the
 * days Monday through Friday") and 61.145(b)(3)(i), 10 working days.
 * @example work starting 2027-03-15 needs notice by 2027-03-01
 */
export function noticeBy(start: DayNumber, workingDays: number): DayNumber {
  let day = start;
  let left = workingDays;
  while (left > 0) {
    day -= 1;
    if (weekdayOf(day) <= 5) left -= 1;
  }
  return day;
}
