import {
  cashView,
  contingencyByMonth,
  gatherMonths,
  paymentsOfLines,
  reconcile,
  spendingByMonth,
  spreadLike,
  sumCents,
  totalOfMonths,
  type CashView,
  type DrawBasis,
  type MonthAmount,
  type Reconciliation,
  type SourcePayments,
} from '../cash-flow';
import type { Award } from './award';
import { NOT_FOUND, PROGRAM_INCOME, type SharedRow } from './budget-row';
import { countyCost, type CountyCost } from './county-cost';
import type { GrantBook } from './grant-book';
import type { FundingSource, GrantInput } from './plan';

/** The cash of the grant budget: the owner's months, and how the payments come from the estimate. */
export interface GrantCash {
  readonly view: CashView;
  readonly payments: readonly MonthAmount[];
  readonly reconciliation: Reconciliation;
  readonly sources: readonly SourcePayments[];
  readonly county: CountyCost;
}

/**
 * The owner's cash under a grant budget. Whatever no grant or partner bears (cost outside the forms, match of
 * the owner, match not yet found) is the owner's own.
 */
export function grantCash(input: GrantInput, book: GrantBook): GrantCash {
  const { lines, plan, contingency } = input;
  const forLines = paymentsOfLines(lines, plan.payment).paid;
  const reserve = contingencyByMonth(
    contingency?.amount ?? 0,
    spendingByMonth(lines),
    contingency?.fromMonth,
  );
  const rows = book.awards.flatMap(award => award.rows);
  const overhead = rows.filter(row => row.kind === 'indirect').flatMap(row => row.paidMonths);
  const payments = gatherMonths([...forLines, ...reserve, ...overhead]);
  const others = plan.sources
    .filter(source => source.mode !== 'own' && source.support === 'cash')
    .map(source => paymentsOf(source, rows));
  const income = borneMonths(rows, PROGRAM_INCOME);
  const borne = gatherMonths([...others.flatMap(source => source.bears), ...income]);
  const own: SourcePayments = {
    sourceId: 'own',
    title: 'Own cash',
    mode: 'own',
    lagMonths: 0,
    bears: difference(payments, borne),
  };
  const scrapMonth = input.scrap?.month ?? payments.at(-1)?.month;
  const receipts =
    scrapMonth === undefined || book.programIncome === 0
      ? []
      : [{ month: scrapMonth, amount: book.programIncome }];
  return {
    view: cashView(payments, [...others, own], receipts),
    payments,
    sources: [...others, own],
    county: countyCost(input, book, [...others, own]),
    reconciliation: reconcileCash(input, book, payments),
  };
}

/** From the sum of payments back to the budget: estimate + contingency + indirect cost − what is donated. */
function reconcileCash(input: GrantInput, book: GrantBook, payments: readonly MonthAmount[]): Reconciliation {
  const donated = input.lines.filter(line => line.inKind === true);
  return reconcile(
    'cash',
    { id: 'estimate', title: 'Estimate', amount: sumCents(input.lines.map(line => line.total)) },
    [
      { id: 'contingency', title: 'Contingency', amount: input.contingency?.amount ?? 0 },
      { id: 'indirect', title: 'Indirect cost of the grantee', amount: book.indirect },
      {
        id: 'in-kind',
        title: 'Contributions in kind, paid by nobody',
        amount: -sumCents(donated.map(line => line.total)),
        lineIds: donated.map(line => line.id),
      },
    ],
    { id: 'payments', title: 'Payments, released retainage included', amount: totalOfMonths(payments) },
  );
}

function paymentsOf(source: FundingSource, rows: readonly SharedRow[]): SourcePayments {
  return {
    sourceId: source.id,
    title: source.title,
    mode: source.mode,
    lagMonths: source.lagMonths,
    bears: borneMonths(rows, source.id),
  };
}

/** What a source bears by month of payment. */
export function borneMonths(rows: readonly SharedRow[], sourceId: string): MonthAmount[] {
  return gatherMonths(
    rows.flatMap(row => {
      const share = row.shares[sourceId] ?? 0;
      return share === 0 ? [] : spreadLike(share, row.paidMonths);
    }),
  );
}

function difference(all: readonly MonthAmount[], part: readonly MonthAmount[]): MonthAmount[] {
  return gatherMonths([...all, ...part.map(({ month, amount }) => ({ month, amount: -amount }))]);
}

/** What the drawing of an award rests on: the grant's part, the match in cash and in kind, program income first. */
export function drawBasisOf(award: Award, matching: readonly FundingSource[], input: GrantInput): DrawBasis {
  const bears = borneMonths(award.rows, PROGRAM_INCOME);
  const month = input.scrap?.month;
  const received = totalOfMonths(bears);
  const match = [...matching.map(source => source.id), NOT_FOUND].flatMap(id => borneMonths(award.rows, id));
  return {
    grant: borneMonths(award.rows, award.source.id),
    match: gatherMonths(match),
    ...(month !== undefined &&
      received !== 0 && { income: { bears, received: [{ month, amount: received }] } }),
  };
}
