import { byteAt } from '../base';
import { civilOf, parseIsoDate, type DayNumber } from './iso-date';
import { observedHolidayDays } from './federal-holidays';
import { spansOf, type DateSpan, type Season } from './season';
import { weekdayOf } from './weekday';
import type { WorkCalendar } from './work-calendar';

/** One entry a day from `first`: 1 where the calendar works. Extra work days win over everything else. */
export function dayFlags(calendar: WorkCalendar, first: DayNumber, length: number): Uint8Array {
  const flags = new Uint8Array(length);
  const worked = new Set<number>(calendar.weekdays);
  const week = Uint8Array.from({ length: 7 }, (_, i) => (worked.has(weekdayOf(first + i)) ? 1 : 0));
  for (let i = 0; i < length; i++) flags[i] = byteAt(week, i % 7);
  const set = (day: DayNumber | undefined, flag: number) => {
    if (day !== undefined && day >= first && day < first + length) flags[day - first] = flag;
  };
  if (calendar.federalHolidays) {
    const last = civilOf(first + length).year;
    for (const day of observedHolidayDays(civilOf(first).year, last).keys()) set(day, 0);
  }
  for (const date of calendar.holidays) set(parseIsoDate(date), 0);
  closeSpans(flags, first, calendar.closures);
  for (const date of calendar.extraWorkDays) set(parseIsoDate(date), 1);
  return flags;
}

/** Sets the days of the spans to 0. */
export function closeSpans(flags: Uint8Array, first: DayNumber, spans: readonly (Season | DateSpan)[]): void {
  for (const span of spans) {
    for (const [from, to] of spansOf(span, first, first + flags.length - 1)) {
      flags.fill(0, Math.max(0, from - first), Math.max(0, to + 1 - first));
    }
  }
}

/** Sets every day outside all of the spans to 0. */
export function keepSpans(flags: Uint8Array, first: DayNumber, spans: readonly (Season | DateSpan)[]): void {
  const outside = new Uint8Array(flags.length).fill(1);
  closeSpans(outside, first, spans);
  for (let i = 0; i < flags.length; i++) if (outside[i] === 1) flags[i] = 0;
}
