import { reconcile, sumCents, type Cents, type EstimateLine, type Reconciliation } from '../cash-flow';
import type { Award } from './award';
import type { BudgetRow } from './budget-row';
import type { GrantInput } from './plan';
import { formTotal } from './tie-out';

/**
 * From the estimate to the totals of the forms by named steps: estimate + contingency + indirect cost − cost
 * outside the award period − cost not allowable − cost on no form − program income where the form subtracts it.
 * The left side is summed from the estimate lines and the rows, the right side is read from the forms.
 */
export function reconcileForms(
  input: GrantInput,
  awards: readonly Award[],
  outside: readonly EstimateLine[],
): Reconciliation {
  const rows = awards.flatMap(award => award.rows);
  const contingency = input.contingency?.amount ?? 0;
  const onForms = sumCents(rows.filter(row => row.kind === 'contingency').map(row => row.total));
  return reconcile(
    'forms',
    { id: 'estimate', title: 'Estimate', amount: sumCents(input.lines.map(line => line.total)) },
    [
      { id: 'contingency', title: 'Contingency', amount: contingency },
      {
        id: 'indirect',
        title: 'Indirect cost of the grantee',
        amount: sumCents(awards.map(award => award.indirect.amount ?? 0)),
      },
      minus('before-award', 'Pre-award cost', rows, row => row.before),
      minus('after-award', 'Cost after the award period', rows, row => row.after),
      minus('not-allowable', 'Cost not allowable', rows, row => row.notAllowable),
      {
        id: 'outside-forms',
        title: 'Cost that no form carries',
        amount: -(sumCents(outside.map(line => line.total)) + contingency - onForms),
        lineIds: outside.map(line => line.id),
      },
      {
        id: 'program-income',
        title: 'Program income, SF-424C line 15',
        amount: -sumCents(awards.map(incomeSubtracted)),
      },
    ],
    { id: 'forms', title: 'Forms total', amount: sumCents(awards.map(award => formTotal(award.form))) },
  );
}

function minus(
  id: string,
  title: string,
  rows: readonly BudgetRow[],
  part: (row: BudgetRow) => Cents,
): { id: string; title: string; amount: Cents; lineIds: string[] } {
  const touched = rows.filter(row => part(row) !== 0);
  return {
    id,
    title,
    amount: -sumCents(touched.map(part)),
    lineIds: [...new Set(touched.flatMap(row => row.lineId ?? []))],
  };
}

/** The program income that the form of an award subtracts. */
export function incomeSubtracted({ form }: Award): Cents {
  if (form.kind === 'SF-424A') return 0;
  return sumCents(form.lines.filter(line => line.id === '15').map(line => line.allowable));
}
