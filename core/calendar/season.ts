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
  const [first, last] = [parseIsoDate(span.from), parseIsoDate(span.to)];
  if (first !== undefined && last !== undefined) return day >= first && day <= last;
  const { year } = civilOf(day);
  const from = dayInYear(span.from, year);
  const to = dayInYear(span.to, year);
  return from <= to ? day >= from && day <= to : day >= from || day <= to;
}

function dayInYear(monthDay: string, year: number): DayNumber {
  const month = Number(monthDay.slice(0, 2));
  return dayOfCivil(year, month, Math.min(Number(monthDay.slice(3)), daysInMonth(year, month)));
}
