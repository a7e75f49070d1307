import { cumulativeCurve, monthSpan, spreadByDays, type Cents, type MonthAmount } from '../cash-flow';
import { lineSpans, type EstimateParts, type EstimateSummary } from '../evaluation';

/** Spending of one month, in cents, and all up to its end. */
export interface MonthOfSpending {
  readonly month: string;
  readonly amount: number;
  readonly cumulative: number;
}

/** What a line spends in a month; without a month where the line has no dates, without an amount where it has none. */
export interface LineMonth {
  readonly month: string | undefined;
  readonly amount: Cents | undefined;
}

/** The cost of each line by month: spread by calendar days from its start to its finish. Lines of nothing spend nothing. */
export function monthsOfLines(
  parts: EstimateParts,
  { lines }: Pick<EstimateSummary, 'lines'>,
): ReadonlyMap<string, readonly LineMonth[]> {
  const spans = lineSpans(parts);
  return new Map(
    lines.map(({ id, total }): [string, readonly LineMonth[]] => {
      const span = spans.get(id);
      if (total?.cents === 0) return [id, []];
      if (span === undefined) return [id, [{ month: undefined, amount: total?.cents }]];
      if (total !== undefined) return [id, spreadByDays(total.cents, span.start, span.finish)];
      const months = monthSpan(span.start.slice(0, 7), span.finish.slice(0, 7));
      return [id, months.map(month => ({ month, amount: undefined }))];
    }),
  );
}

/** The cost of all lines by month, not yet gathered. @returns nothing while a line has no amount or no dates. */
export function spendingOfLines(
  parts: EstimateParts,
  summary: Pick<EstimateSummary, 'lines'>,
): readonly MonthAmount[] | undefined {
  const all = [...monthsOfLines(parts, summary).values()].flat();
  const known = all.flatMap(({ month, amount }): MonthAmount[] =>
    month === undefined || amount === undefined ? [] : [{ month, amount }],
  );
  return known.length < all.length ? undefined : known;
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
  const amounts = spendingOfLines(parts, summary);
  return amounts === undefined || amounts.length === 0 ? undefined : cumulativeCurve(amounts);
}
