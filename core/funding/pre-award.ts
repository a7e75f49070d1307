import type { Finding } from '../base';
import { dollars, sumCents, type Cents } from '../cash-flow';
import type { BudgetRow } from './budget-row';
import type { FundingSource } from './plan';

/** The rules that an award of federal money keeps for cost from before it: approval in writing, and cost of applying. */
export const PRE_AWARD_RULE = '2 CFR 200.458; 2 CFR 200.460';

type SpentRow = Pick<BudgetRow, 'kind' | 'months' | 'before'>;

/** The rows whose cost is spent by work: contingency and indirect cost only follow it. */
function spent(rows: readonly SpentRow[]): readonly SpentRow[] {
  return rows.filter(({ kind }) => kind !== 'contingency' && kind !== 'indirect');
}

/**
 * What an award is charged for work of the months before the month of a date.
 * @param date `YYYY-MM-DD`.
 */
export function chargedBefore(rows: readonly SpentRow[], date: string): Cents {
  const early = spent(rows).flatMap(row => row.months.filter(({ month }) => month < date.slice(0, 7)));
  return sumCents(early.map(({ amount }) => amount));
}

/**
 * Cost from before an award to which the grantor has not agreed, told once an award: what the award is charged
 * before the award date, and what falls before its period and so stands on no form.
 * @param awardDate `YYYY-MM-DD`.
 * @source 2 CFR 200.458 (pre-award cost), 2 CFR 200.460 (cost of proposals).
 */
export function preAwardFindings(
  rows: readonly SpentRow[],
  source: FundingSource,
  awardDate: string,
): Finding[] {
  if (source.preAwardApproved === true || source.period === undefined) return [];
  const isFederal = source.kind === 'federal';
  const charged = chargedBefore(rows, awardDate);
  const left = sumCents(spent(rows).map(row => row.before));
  const told = [
    {
      amount: charged,
      message: `${dollars(charged)} of the cost charged to ${source.title} is spent in months before the award date, ${awardDate}`,
      meaning: isFederal
        ? 'a Federal award bears it only with written approval of the awarding agency'
        : 'whether the grant bears it is for the grantor to say',
    },
    {
      amount: left,
      message: `${dollars(left)} is spent before the period of ${source.title} begins on ${source.period.start}`,
      meaning: 'what falls before the period stands on no form, and the county bears it',
    },
  ].filter(({ amount }) => amount > 0);
  if (told.length === 0) return [];
  return [
    {
      code: 'funding/before-award',
      weight: 'warns',
      place: `/funding/sources/${source.id}`,
      message: told.map(({ message }) => message).join('; '),
      meaning: told.map(({ meaning }) => meaning).join('; '),
      remedy: isFederal
        ? 'ask the Federal awarding agency for written approval, or plan this work after the award'
        : 'ask the grantor to agree to it, or plan this work after the award',
      ...(isFederal && { rule: PRE_AWARD_RULE }),
    },
  ];
}
