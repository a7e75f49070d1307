import { cumulativeCurve, spreadByDays, type MonthAmount } from '../cash-flow';
import { lineSpans, type EstimateParts, type EstimateSummary } from '../evaluation';

/** Spending of one month, in cents, and all up to its end. */
export interface MonthOfSpending {
  readonly month: string;
  readonly amount: number;
  readonly cumulative: number;
}

/**
 * The cost of work by month: each line spread by calendar days from its start to its finish; it adds up to the total.
 * Payment follows later by the terms of the contract.
 * @returns nothing when a line is absent or has no dates, or nothing is spent: a part of the spending would pass for all of it.
 */
export function monthlySpending(
  parts: EstimateParts,
  summary: EstimateSummary,
): MonthOfSpending[] | undefined {
  const spans = lineSpans(parts);
  const amounts: MonthAmount[] = [];
  for (const line of summary.lines) {
    const span = spans.get(line.id);
    if (line.total === undefined) return undefined;
    if (line.total.cents === 0) continue;
    if (span === undefined) return undefined;
    amounts.push(...spreadByDays(line.total.cents, span.start, span.finish));
  }
  return amounts.length === 0 ? undefined : cumulativeCurve(amounts);
}
