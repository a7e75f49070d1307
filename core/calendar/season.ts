import { civilOf, dayOfCivil, daysInMonth, parseIsoDate, type DayNumber } from './iso-date';

/** A span of the year that comes back every year, both ends included; `from` after `to` runs across the year's end. */
export interface Season {
  /** `MM-DD`. */
  readonly from: string;
  /** `MM-DD`; 02-29 is the last day of February in any year. */
  readonly to: string;
}

/** One span of days, both ends included, `YYYY-MM-DD`. */
export interface DateSpan {
  readonly from: string;
  readonly to: string;
}

const MONTH_DAY = /^(\d{2})-(\d{2})$/;

/** Whether a text is a day of the year, `MM-DD`, that some year has. */
export function isMonthDay(text: string): boolean {
  const parts = MONTH_DAY.exec(text);
  if (!parts) return false;
  const [month, day] = [Number(parts[1]), Number(parts[2])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(2000, month);
}

/** Whether a day lies in a season or span, both ends included. */
export function liesIn(day: DayNumber, span: Season | DateSpan): boolean {
  return spansOf(span, day, day).length > 0;
}

/** The spells of a season or span that touch the days from `first` to `last`, as first and last day, in order. */
export function spansOf(
  span: Season | DateSpan,
  first: DayNumber,
  last: DayNumber,
): [DayNumber, DayNumber][] {
  const [from, to] = [parseIsoDate(span.from), parseIsoDate(span.to)];
  const spells: [DayNumber, DayNumber][] = [];
  if (from !== undefined && to !== undefined) spells.push([from, to]);
  else {
    for (let year = civilOf(first).year - 1; year <= civilOf(last).year; year++) {
      const start = dayInYear(span.from, year);
      const end = dayInYear(span.to, year);
      spells.push([start, end < start ? dayInYear(span.to, year + 1) : end]);
    }
  }
  return spells.filter(([start, end]) => end >= first && start <= last);
}

/** The day of the year `MM-DD` in one year; 29 February is the last day of any February. */
export function dayInYear(monthDay: string, year: number): DayNumber {
  const month = Number(monthDay.slice(0, 2));
  return dayOfCivil(year, month, Math.min(Number(monthDay.slice(3)), daysInMonth(year, month)));
}
