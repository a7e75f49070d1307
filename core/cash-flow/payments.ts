import { shareOf, type Cents } from './cents';
import { contractIdOf, type EstimateLine, type MonthAmount } from './estimate-lines';
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
 * @param lastMonth the last month of the whole contract, after which the retainage is released; without it the
 * last month of this work.
 */
export function contractPayments(
  work: readonly MonthAmount[],
  terms: PaymentTerms,
  lastMonth?: string,
): Payments {
  const earned = gatherMonths(work);
  let before: Cents = 0;
  let heldBefore: Cents = 0;
  const split = earned.map(({ month, amount }) => {
    before += amount;
    const kept = shareOf(before, terms.retainage) - heldBefore;
    heldBefore += kept;
    return { month: laterMonth(month, terms.contractPayLag), kept, paid: amount - kept };
  });
  const held = split.map(({ month, kept }) => ({ month, amount: kept }));
  const progress = split.map(({ month, paid }) => ({ month, amount: paid }));
  const last = lastMonth ?? earned.at(-1)?.month;
  const release =
    last === undefined
      ? []
      : [
          {
            month: laterMonth(last, terms.releaseAfterMonths + terms.contractPayLag),
            amount: totalOfMonths(held),
          },
        ];
  const released = release.filter(({ amount }) => amount !== 0);
  return { paid: gatherMonths([...progress, ...released]), held, released };
}

/** The owner's own cost, paid whole after its lag. */
export function ownPayments(cost: readonly MonthAmount[], terms: PaymentTerms): MonthAmount[] {
  return gatherMonths(
    cost.map(({ month, amount }) => ({ month: laterMonth(month, terms.ownPayLag), amount })),
  );
}

/** The last month of work of each contract, by contract id. */
export function lastMonths(lines: readonly EstimateLine[]): Map<string, string> {
  const last = new Map<string, string>();
  for (const line of lines.filter(one => one.contract))
    for (const { month } of line.months) {
      const known = last.get(contractIdOf(line));
      if (known === undefined || month > known) last.set(contractIdOf(line), month);
    }
  return last;
}

/**
 * Everything the owner pays by month: contract work with retainage and release, and its own cost. Donated
 * lines are left out: nobody is paid for them.
 */
export function paymentsOfLines(lines: readonly EstimateLine[], terms: PaymentTerms): Payments {
  const last = lastMonths(lines);
  const paidFor = lines.filter(line => line.inKind !== true);
  const contract = paidFor
    .filter(line => line.contract)
    .map(line => contractPayments(line.months, terms, last.get(contractIdOf(line))));
  const own = paidFor.filter(line => !line.contract).flatMap(line => ownPayments(line.months, terms));
  return {
    paid: gatherMonths([...contract.flatMap(part => part.paid), ...own]),
    held: gatherMonths(contract.flatMap(part => part.held)),
    released: gatherMonths(contract.flatMap(part => part.released)),
  };
}
