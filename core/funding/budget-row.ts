import type { Cents, MonthAmount } from '../cash-flow';
import type { PieceKind } from './forms';

/** One row of a grant budget: a cost with its line on the form, its months and who bears it. */
export interface BudgetRow {
  readonly id: string;
  readonly lineId?: string;
  readonly title: string;
  readonly kind: PieceKind;
  readonly stage?: string;
  readonly activityId: string;
  readonly contractId?: string;
  readonly isInKind: boolean;
  /** The line of the form. */
  readonly classId: string;
  /** Cost of the row whether allowed or not. */
  readonly total: Cents;
  readonly before: Cents;
  readonly after: Cents;
  readonly notAllowable: Cents;
  /** What the form carries. */
  readonly allowable: Cents;
  /** The allowable cost by month of work. */
  readonly months: readonly MonthAmount[];
  /** The allowable cost by month of payment. */
  readonly paidMonths: readonly MonthAmount[];
}

/** A row with what each source bears of it, by source id; the parts add up to the allowable cost. */
export interface SharedRow extends BudgetRow {
  readonly shares: Readonly<Record<string, Cents>>;
}

/** What bears a cost that no source was found for. */
export const NOT_FOUND = 'not-found';
/** What that part of a budget is called wherever it is shown: it is no source. */
export const UNFUNDED_TITLE = 'Not funded yet';
/** What bears a cost that program income pays for. */
export const PROGRAM_INCOME = 'program-income';
