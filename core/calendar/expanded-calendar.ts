import { BugError } from '../base';
import { civilOf, parseIsoDate, type DayNumber } from './iso-date';
import { observedHolidayDays } from './federal-holidays';
import { closeSpans, dayFlags } from './day-flags';
import { liesIn, type DateSpan, type Season } from './season';
import { weekdayOf } from './weekday';
import type { DayKind, WorkCalendar } from './work-calendar';

/**
 * A work calendar laid out over a span of days as two tables, so that adding work days is two look-ups.
 * `before[i]` counts the work days from `first` up to, not including, day `first + i`;
 * `days[n]` is the offset from `first` of the nth work day (0 the earliest).
 */
export interface ExpandedCalendar {
  readonly first: DayNumber;
  /** How many days the tables cover. */
  readonly length: number;
  /** `length + 1` entries. */
  readonly before: Int32Array;
  readonly days: Int32Array;
}

/** Lays a calendar out over `length` days from `first`; `closed` are spells without work beyond the calendar's own. */
export function expandCalendar(
  calendar: WorkCalendar,
  first: DayNumber,
  length: number,
  closed: readonly (Season | DateSpan)[] = [],
): ExpandedCalendar {
  const flags = dayFlags(calendar, first, length);
  closeSpans(flags, first, closed);
  return expandFlags(first, flags);
}

/** Lays out flags a day, 1 worked. */
export function expandFlags(first: DayNumber, flags: Uint8Array): ExpandedCalendar {
  const length = flags.length;
  const before = new Int32Array(length + 1);
  const days = new Int32Array(length);
  let count = 0;
  for (let i = 0; i < length; i++) {
    before[i] = count;
    if (flags[i] === 1) days[count++] = i;
  }
  before[length] = count;
  return { first, length, before, days: days.subarray(0, count) };
}

/** A function that says of each day of a span why it is worked or not. Extra work days win, then holidays, closures. */
export function dayKinds(
  calendar: WorkCalendar,
  first: DayNumber,
  last: DayNumber,
): (day: DayNumber) => DayKind {
  const weekdays = new Set<number>(calendar.weekdays);
  const extra = new Set(calendar.extraWorkDays.map(parseIsoDate));
  const holidays = new Set<DayNumber | undefined>(calendar.holidays.map(parseIsoDate));
  if (calendar.federalHolidays) {
    for (const day of observedHolidayDays(civilOf(first).year, civilOf(last).year).keys()) holidays.add(day);
  }
  return day => {
    if (extra.has(day)) return 'worked';
    if (holidays.has(day)) return 'holiday';
    if (calendar.closures.some(span => liesIn(day, span))) return 'closure';
    return weekdays.has(weekdayOf(day)) ? 'worked' : 'weekday';
  };
}

/** Whether a day is a work day. @throws BugError outside the span laid out. */
export function isWorkDay(calendar: ExpandedCalendar, day: DayNumber): boolean {
  return workDaysBefore(calendar, day + 1) > workDaysBefore(calendar, day);
}

/** The first work day on or after a day, or `undefined` when the span laid out has none. */
export function nextWorkDay(calendar: ExpandedCalendar, day: DayNumber): DayNumber | undefined {
  return nthWorkDay(calendar, workDaysBefore(calendar, day));
}

/** The last work day on or before a day, or `undefined` when the span laid out has none. */
export function previousWorkDay(calendar: ExpandedCalendar, day: DayNumber): DayNumber | undefined {
  return nthWorkDay(calendar, workDaysBefore(calendar, day + 1) - 1);
}

/**
 * The day on which the nth work day falls, counting the first work day on or after `day` as 0.
 * So work of n work days that can begin on `day` ends on `addWorkDays(calendar, day, n - 1)`.
 * @returns `undefined` when that day lies outside the span laid out.
 */
export function addWorkDays(
  calendar: ExpandedCalendar,
  day: DayNumber,
  workDays: number,
): DayNumber | undefined {
  return nthWorkDay(calendar, workDaysBefore(calendar, day) + workDays);
}

/** Work days from `from` up to, not including, `to`. Negative when `to` is the earlier. */
export function countWorkDays(calendar: ExpandedCalendar, from: DayNumber, to: DayNumber): number {
  return workDaysBefore(calendar, to) - workDaysBefore(calendar, from);
}

function workDaysBefore(calendar: ExpandedCalendar, day: DayNumber): number {
  const count = calendar.before[day - calendar.first];
  if (count === undefined) throw new BugError(`day ${day} lies outside the calendar laid out`);
  return count;
}

function nthWorkDay(calendar: ExpandedCalendar, index: number): DayNumber | undefined {
  const offset = calendar.days[index];
  return offset === undefined ? undefined : calendar.first + offset;
}
