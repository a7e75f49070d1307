import { at } from '../base';
import { civilOf, dayOfCivil, daysInMonth, isoOf, type DayNumber } from './iso-date';

/** The calendar month of a day, `YYYY-MM`. */
export function monthOf(day: DayNumber): string {
  return isoOf(day).slice(0, 7);
}

/** The first day of the month a day lies in. */
export function monthStart(day: DayNumber): DayNumber {
  const { year, month } = civilOf(day);
  return dayOfCivil(year, month, 1);
}

/** The last day of the month a day lies in. */
export function monthEnd(day: DayNumber): DayNumber {
  const { year, month } = civilOf(day);
  return dayOfCivil(year, month, daysInMonth(year, month));
}

/**
 * The same day of the month some months later (negative: earlier); where that month is shorter, its last day.
 * So 31 January plus one month is 28 or 29 February.
 */
export function addMonths(day: DayNumber, months: number): DayNumber {
  const civil = civilOf(day);
  const count = civil.year * 12 + (civil.month - 1) + months;
  const year = Math.floor(count / 12);
  const month = count - year * 12 + 1;
  return dayOfCivil(year, month, Math.min(civil.day, daysInMonth(year, month)));
}

/** Every month `YYYY-MM` from the one of the first day to the one of the last day, in order. */
export function monthsBetween(first: DayNumber, last: DayNumber): string[] {
  const months: string[] = [];
  for (let day = monthStart(first); day <= last; day = addMonths(day, 1)) months.push(monthOf(day));
  return months;
}

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A month `YYYY-MM` in words: `Mar 2027`. */
export function monthWords(month: string): string {
  return `${at(NAMES, Number(month.slice(5, 7)) - 1)} ${month.slice(0, 4)}`;
}
