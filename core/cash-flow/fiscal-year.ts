import { civilOf } from '../calendar';
import { sumCents, type Cents } from './cents';
import type { MonthAmount } from './estimate-lines';
import { firstDayOf } from './months';

/**
 * The fiscal year a month belongs to, named after the calendar year in which it ends: with a start in
 * October, 2026-10 belongs to fiscal year 2027. A year that starts in January is the calendar year.
 * @param startMonth 1 to 12.
 */
export function fiscalYearOf(month: string, startMonth: number): number {
  const civil = civilOf(firstDayOf(month));
  return startMonth > 1 && civil.month >= startMonth ? civil.year + 1 : civil.year;
}

/** Amounts by fiscal year, in order of time. The sum over the years does not depend on the start month. */
export function byFiscalYear(
  amounts: readonly MonthAmount[],
  startMonth: number,
): { readonly fiscalYear: number; readonly amount: Cents }[] {
  const years = new Map<number, Cents[]>();
  for (const { month, amount } of amounts) {
    const year = fiscalYearOf(month, startMonth);
    years.set(year, [...(years.get(year) ?? []), amount]);
  }
  return [...years]
    .map(([fiscalYear, parts]) => ({ fiscalYear, amount: sumCents(parts) }))
    .sort((a, b) => a.fiscalYear - b.fiscalYear);
}
