import type { Cents } from './cents';
import type { MonthAmount } from './estimate-lines';
import { gatherMonths, laterMonth, totalOfMonths } from './months';

/** Money that comes to the owner from one source, by the months of the payments it bears. */
export interface SourcePayments {
  readonly sourceId: string;
  readonly title: string;
  /** `advance`: drawn for the month of payment. `reimbursement`: claimed after it and received later. `own`: the owner's cash. */
  readonly mode: 'advance' | 'reimbursement' | 'own';
  /** Months from payment to receipt; 0 for an advance. */
  readonly lagMonths: number;
  /** What the source bears of the payments, by month of payment. */
  readonly bears: readonly MonthAmount[];
}

/** One month of the owner's cash. */
export interface CashMonth {
  readonly month: string;
  readonly paid: Cents;
  readonly received: Cents;
  /** Everything paid less everything received so far: what the owner carries at the end of the month. */
  readonly carried: Cents;
  /** What the owner carries beyond its own share of what was paid: the cash gap. */
  readonly gap: Cents;
}

/** The most of something at the end of a month. */
export interface Peak {
  readonly month: string;
  readonly amount: Cents;
}

/** The owner's cash by month, the peak of the gap, and the cost of carrying it. */
export interface CashView {
  readonly months: readonly CashMonth[];
  readonly peak?: Peak;
  readonly received: readonly { readonly sourceId: string; readonly months: readonly MonthAmount[] }[];
  readonly totalPaid: Cents;
  readonly totalReceived: Cents;
}

/** When the money of a source arrives. The owner's own cash never arrives: it is what is carried. */
export function receiptsOf(source: SourcePayments): MonthAmount[] {
  if (source.mode === 'own') return [];
  const lag = source.mode === 'advance' ? 0 : source.lagMonths;
  return gatherMonths(source.bears.map(({ month, amount }) => ({ month: laterMonth(month, lag), amount })));
}

/** What stood paid or received by the end of a month. */
export function upTo(amounts: readonly MonthAmount[], month: string): Cents {
  return totalOfMonths(amounts.filter(entry => entry.month <= month));
}
