import { addMonths, civilOf, dayOf, monthEnd, monthOf, monthsBetween, type DayNumber } from '../calendar';
import { allocateOver, sumCents, type Cents } from './cents';
import type { MonthAmount } from './estimate-lines';

/** The month some months later (negative: earlier). */
export function laterMonth(month: string, months: number): string {
  return monthOf(addMonths(firstDayOf(month), months));
}

/** How many months the second month lies after the first. */
export function monthsFrom(first: string, second: string): number {
  const [a, b] = [civilOf(firstDayOf(first)), civilOf(firstDayOf(second))];
  return (b.year - a.year) * 12 + b.month - a.month;
}

/** Every month from the first to the last. */
export function monthSpan(first: string, last: string): string[] {
  return monthsBetween(firstDayOf(first), firstDayOf(last));
}

/** The first day of a month `YYYY-MM`. */
export function firstDayOf(month: string): DayNumber {
  return dayOf(`${month}-01`);
}

/** The last day of a month `YYYY-MM`. */
export function lastDayOf(month: string): DayNumber {
  return monthEnd(firstDayOf(month));
}

/** Amounts gathered by month, in order of time; months with nothing between them are left out. */
export function gatherMonths(amounts: readonly MonthAmount[]): MonthAmount[] {
  const byMonth = new Map<string, Cents[]>();
  for (const { month, amount } of amounts) byMonth.set(month, [...(byMonth.get(month) ?? []), amount]);
  return [...byMonth]
    .map(([month, parts]) => ({ month, amount: sumCents(parts) }))
    .sort((a, b) => (a.month < b.month ? -1 : 1));
}

/** The sum of all months. */
export function totalOfMonths(amounts: readonly MonthAmount[]): Cents {
  return sumCents(amounts.map(({ amount }) => amount));
}

/** A total spread over months in proportion to other amounts in those months; it adds up to the cent. */
export function spreadLike(total: Cents, pattern: readonly MonthAmount[]): MonthAmount[] {
  return allocateOver(total, pattern, entry => entry.amount).map(({ item, amount }) => ({
    month: item.month,
    amount,
  }));
}

/**
 * A total spread over the days from start to finish (both counted), by calendar days of each month.
 * @param start `YYYY-MM-DD`. @param finish `YYYY-MM-DD`, not before the start.
 */
export function spreadByDays(total: Cents, start: string, finish: string): MonthAmount[] {
  const [first, last] = [dayOf(start), dayOf(finish)];
  const pattern = monthsBetween(first, last).map(month => ({
    month,
    amount: daysInside(month, first, last),
  }));
  return spreadLike(total, pattern);
}

/** How many days of a month lie between two days, both counted. */
export function daysInside(month: string, first: DayNumber, last: DayNumber): number {
  const from = Math.max(first, firstDayOf(month));
  const to = Math.min(last, lastDayOf(month));
  return Math.max(0, to - from + 1);
}
