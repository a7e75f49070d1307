import { sumCents, type Cents } from './cents';
import type { EstimateLine, MonthAmount } from './estimate-lines';
import { gatherMonths, monthSpan, spreadLike, totalOfMonths } from './months';

/** Spending of one month and everything up to its end. */
export interface CumulativeMonth extends MonthAmount {
  readonly cumulative: Cents;
}

/** The cost of lines by month of work, in order of time. */
export function spendingByMonth(lines: readonly EstimateLine[]): MonthAmount[] {
  return gatherMonths(lines.flatMap(line => line.months));
}

/** Every month from the first to the last with its amount and the running total; quiet months show 0. */
export function cumulativeCurve(amounts: readonly MonthAmount[]): CumulativeMonth[] {
  const gathered = gatherMonths(amounts);
  const [first, last] = [gathered[0], gathered.at(-1)];
  if (!first || !last) return [];
  let cumulative: Cents = 0;
  return monthSpan(first.month, last.month).map(month => {
    const amount = sumCents(gathered.filter(entry => entry.month === month).map(entry => entry.amount));
    cumulative += amount;
    return { month, amount, cumulative };
  });
}

/**
 * Contingency spread in proportion to the work not yet spent: the months from `fromMonth` on. Where nothing is
 * left to spend it stands in the last month.
 * @param fromMonth first month not yet spent, `YYYY-MM`; without it all the work lies ahead.
 */
export function contingencyByMonth(
  contingency: Cents,
  spending: readonly MonthAmount[],
  fromMonth?: string,
): MonthAmount[] {
  const ahead = spending.filter(({ month, amount }) => amount > 0 && (!fromMonth || month >= fromMonth));
  if (totalOfMonths(ahead) > 0) return spreadLike(contingency, ahead);
  const last = spending.at(-1);
  return last ? [{ month: last.month, amount: contingency }] : [];
}
