import {
  sumCents,
  totalOfMonths,
  type Cents,
  type ReconciliationStep,
  type SourcePayments,
} from '../cash-flow';
import type { GrantBook } from './grant-book';
import type { GrantInput } from './plan';

/** What the owner pays in all, and of what. */
export interface CountyCost {
  readonly total: Cents;
  /** What its own sources bear of the cost on the forms. */
  readonly share: Cents;
  /** The same by source. */
  readonly shares: readonly { readonly sourceId: string; readonly title: string; readonly amount: Cents }[];
  /** What no source bears yet of the cost on the forms: the owner pays it until a source is found. */
  readonly unfunded: Cents;
  /** What stands on no form, or outside what an award allows: nobody else bears it. */
  readonly outside: Cents;
  /** Where that comes from, by the steps from the estimate to the forms; costs, no credits. */
  readonly outsideSteps: readonly ReconciliationStep[];
}

/** The steps from the estimate to the forms that leave cost to the owner. */
const LEFT_TO_OWNER: readonly string[] = ['before-award', 'after-award', 'not-allowable', 'outside-forms'];

/** What the owner pays in all: its share of the forms, what no source bears yet, and what the forms leave out. */
export function countyCost(
  { lines, plan }: Pick<GrantInput, 'lines' | 'plan'>,
  { awards, reconciliation, unfunded }: Pick<GrantBook, 'awards' | 'reconciliation' | 'unfunded'>,
  payments: readonly SourcePayments[],
): CountyCost {
  const own = plan.sources.filter(source => source.mode === 'own' && source.support === 'cash');
  const rows = awards.flatMap(award => award.rows);
  const shares = own.map(({ id, title }) => ({
    sourceId: id,
    title,
    amount: sumCents(rows.map(row => row.shares[id] ?? 0)),
  }));
  const share = sumCents(shares.map(({ amount }) => amount));
  const total = sumCents(
    payments.filter(({ mode }) => mode === 'own').map(({ bears }) => totalOfMonths(bears)),
  );
  const left = reconciliation.steps.filter(({ id }) => LEFT_TO_OWNER.includes(id));
  const donated = sumCents(lines.filter(line => line.inKind === true).map(line => line.total));
  const onForms = sumCents(rows.filter(row => row.isInKind).map(row => row.allowable));
  const outsideSteps = [
    ...left.map(step => ({ ...step, amount: -step.amount })),
    { id: 'in-kind', title: 'Less what is given in kind of it', amount: onForms - donated },
  ].filter(({ amount }) => amount !== 0);
  return { total, share, shares, unfunded, outside: total - share - unfunded, outsideSteps };
}
