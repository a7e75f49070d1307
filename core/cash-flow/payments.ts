import { shareOf, type Cents } from './cents';
import type { EstimateLine, MonthAmount } from './estimate-lines';
import { gatherMonths, laterMonth, totalOfMonths } from './months';

/** How contract work is paid. */
export interface PaymentTerms {
  /** Share of each progress payment held back until release, such as 0.05. */
  readonly retainage: number;
  /** Months between the last month of contract work and the release of the retainage. */
  readonly releaseAfterMonths: number;
  /** Months between the month of contract work and the month it is paid. */
  readonly contractPayLag: number;
  /** The same for the owner's own cost. */
  readonly ownPayLag: number;
}

/** What is paid by month, and what of it is held back and released. */
export interface Payments {
  readonly paid: readonly MonthAmount[];
  /** Retainage held back by month (positive) of work paid that month. */
  readonly held: readonly MonthAmount[];
  readonly released: readonly MonthAmount[];
}

/**
 * Payments of contract work: each month's work less the retainage, and the retainage whole at its release.
 * The retainage is rounded on the running total, so the payments with the release add up to the work.
 */
export function contractPayments(work: readonly MonthAmount[], terms: PaymentTerms): Payments {
  const earned = gatherMonths(work);
  let before: Cents = 0;
  let heldBefore: Cents = 0;
  const held = earned.map(({ month, amount }) => {
    before += amount;
    const kept = shareOf(before, terms.retainage) - heldBefore;
    heldBefore += kept;
    return { month: laterMonth(month, terms.contractPayLag), amount: kept };
  });
  const progress = earned.map(({ month, amount }, index) => ({
    month: laterMonth(month, terms.contractPayLag),
    amount: amount - (held[index]?.amount ?? 0),
  }));
  const last = earned.at(-1);
  const release = last
    ? [
        {
          month: laterMonth(last.month, terms.releaseAfterMonths + terms.contractPayLag),
          amount: totalOfMonths(held),
        },
      ]
    : [];
  const released = release.filter(({ amount }) => amount !== 0);
  return { paid: gatherMonths([...progress, ...released]), held, released };
}

/** The owner's own cost, paid whole after its lag. */
export function ownPayments(cost: readonly MonthAmount[], terms: PaymentTerms): MonthAmount[] {
  return gatherMonths(
    cost.map(({ month, amount }) => ({ month: laterMonth(month, terms.ownPayLag), amount })),
  );
}

/**
 * Everything the owner pays by month: contract work with retainage and release, and its own cost. Donated
 * lines are left out: nobody is paid for them.
 */
export function paymentsOfLines(lines: readonly EstimateLine[], terms: PaymentTerms): Payments {
  const paidFor = lines.filter(line => line.inKind !== true);
  const contract = contractPayments(
    paidFor.filter(line => line.contract).flatMap(line => line.months),
    terms,
  );
  const own = ownPayments(
    paidFor.filter(line => !line.contract).flatMap(line => line.months),
    terms,
  );
  return { ...contract, paid: gatherMonths([...contract.paid, ...own]) };
}
