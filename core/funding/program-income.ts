import { shareOf, type Cents } from '../cash-flow';

/** What is done with program income. @source 2 CFR 200.307; 50 CFR 80.123. */
export const INCOME_METHODS = ['deduction', 'addition', 'cost sharing'] as const;
export type IncomeMethod = (typeof INCOME_METHODS)[number];

/** The method where the project statement names none. @source 50 CFR 80.123. */
export const METHOD_IF_NOT_STATED: IncomeMethod = 'deduction';

/** What a method makes of the shares. */
export interface IncomeResult {
  readonly method: IncomeMethod;
  readonly income: Cents;
  /** The cost the shares are taken of. */
  readonly shared: Cents;
  readonly federal: Cents;
  readonly match: Cents;
  /** The part of the match that is program income (cost sharing only). */
  readonly matchFromIncome: Cents;
  readonly matchFromOthers: Cents;
  /** What the project may spend in all. */
  readonly spending: Cents;
  /** Income beyond what the method can use; it must be agreed with the grantor. */
  readonly unused: Cents;
}

/** Income after the cost of earning it, where that cost was not paid with grant or match. @source 50 CFR 80.122. */
export function netIncome(gross: Cents, costOfEarning: Cents): Cents {
  return Math.max(0, gross - costOfEarning);
}

/**
 * The shares of an allowable cost with program income.
 * Deduction: the income lowers the cost before it is shared. Addition: it pays for more of the project and the
 * shares stay. Cost sharing: it stands in for match.
 * @param allowable cents. @param share the federal share, such as 0.75.
 */
export function applyProgramIncome(
  allowable: Cents,
  income: Cents,
  share: number,
  method: IncomeMethod,
): IncomeResult {
  const deducted = method === 'deduction' ? Math.min(income, Math.max(0, allowable)) : 0;
  const shared = allowable - deducted;
  const federal = shareOf(shared, share);
  const match = shared - federal;
  const matchFromIncome = method === 'cost sharing' ? Math.min(income, Math.max(0, match)) : 0;
  const added = method === 'addition' ? income : 0;
  return {
    method,
    income,
    shared,
    federal,
    match,
    matchFromIncome,
    matchFromOthers: match - matchFromIncome,
    spending: allowable + added,
    unused: income - deducted - matchFromIncome - added,
  };
}
