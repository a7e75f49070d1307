import { cumulativeCurve, spreadByDays, type MonthAmount } from '../cash-flow';
import { dayOf, isoOf } from '../calendar';
import { isObligation } from '../estimate';
import { obligationStart, type EstimateParts, type EstimateSummary } from '../evaluation';

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
  const spans = spansOf(parts);
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

interface Span {
  readonly start: string;
  readonly finish: string;
}

/** From when to when each line is worked on: activities, spans and what the owner is bound to after the sinking. */
export function spansOf({ schedule, planned }: EstimateParts): Map<string, Span> {
  const spans = new Map<string, Span>(
    [...schedule.activities, ...schedule.hammocks].map(({ id, start, finish }) => [id, { start, finish }]),
  );
  for (const { item, days } of planned.filter(plan => isObligation(plan.item))) {
    const start = obligationStart(
      item.after.map(after => after.item),
      schedule,
    );
    spans.set(item.id, { start, finish: isoOf(dayOf(start) + Math.max(0, Math.ceil(days) - 1)) });
  }
  return spans;
}
