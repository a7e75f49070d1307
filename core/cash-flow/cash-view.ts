import { shareOf, sumCents, type Cents } from './cents';
import type { MonthAmount } from './estimate-lines';
import { gatherMonths, monthSpan, totalOfMonths } from './months';
import { receiptsOf, upTo, type CashMonth, type CashView, type Peak, type SourcePayments } from './receipts';

/**
 * The owner's cash by month: what is paid, what the sources pay back and when, and the gap between them.
 * The lag of a source moves the gap and no total.
 * @param paid all payments by month (retainage released with them), from {@link paymentsOfLines} and the like.
 * @param sources what each source bears of them; the owner's own share has mode `own`.
 * @param otherReceipts money that comes in beside the sources, such as the price of scrap.
 */
export function cashView(
  paid: readonly MonthAmount[],
  sources: readonly SourcePayments[],
  otherReceipts: readonly MonthAmount[] = [],
): CashView {
  const received = sources.map(source => ({ sourceId: source.sourceId, months: receiptsOf(source) }));
  const comesIn = gatherMonths([...received.flatMap(source => source.months), ...otherReceipts]);
  const ownShare = gatherMonths(
    sources.filter(source => source.mode === 'own').flatMap(source => source.bears),
  );
  const all = gatherMonths([...paid, ...comesIn]);
  const [first, last] = [all[0], all.at(-1)];
  const months = first && last ? monthSpan(first.month, last.month) : [];
  const rows = months.map(month => cashMonth(month, paid, comesIn, ownShare));
  const peak = peakOf(rows);
  return {
    months: rows,
    ...(peak && { peak }),
    received,
    totalPaid: totalOfMonths(paid),
    totalReceived: totalOfMonths(comesIn),
  };
}

function cashMonth(
  month: string,
  paid: readonly MonthAmount[],
  comesIn: readonly MonthAmount[],
  ownShare: readonly MonthAmount[],
): CashMonth {
  const carried = upTo(paid, month) - upTo(comesIn, month);
  return {
    month,
    paid: within(paid, month),
    received: within(comesIn, month),
    carried,
    gap: Math.max(0, carried - upTo(ownShare, month)),
  };
}

function within(amounts: readonly MonthAmount[], month: string): Cents {
  return sumCents(amounts.filter(entry => entry.month === month).map(entry => entry.amount));
}

function peakOf(rows: readonly CashMonth[]): Peak | undefined {
  const worst = rows.reduce<CashMonth | undefined>(
    (peak, row) => (row.gap > (peak?.gap ?? 0) ? row : peak),
    undefined,
  );
  return worst && { month: worst.month, amount: worst.gap };
}

/** The month at whose end the owner carries most, its own share included; nothing while it carries nothing. */
export function mostCarried({ months }: Pick<CashView, 'months'>): Peak | undefined {
  const most = months.reduce<CashMonth | undefined>(
    (best, row) => (row.carried > (best?.carried ?? 0) ? row : best),
    undefined,
  );
  return most && { month: most.month, amount: most.carried };
}

/**
 * The cost of carrying the gap: simple interest of a twelfth of the yearly rate on the gap at the end of each
 * month, rounded by month. It is shown beside the budget and never in the total.
 * @param yearlyRate such as 0.045, the user's own figure with its source.
 */
export function carryingCost(view: CashView, yearlyRate: number): Cents {
  return sumCents(view.months.map(({ gap }) => shareOf(gap, yearlyRate / 12)));
}
