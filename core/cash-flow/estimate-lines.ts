import type { Basis } from '../base';
import { STAGES, type StageKey } from '../work';
import type { Cents } from './cents';

export { STAGES };
export type Stage = StageKey;

/** What a line is made of. */
export const ELEMENTS = [
  'labour',
  'equipment',
  'material',
  'disposal',
  'subcontract',
  'fee',
  'markUp',
] as const;
export type Element = (typeof ELEMENTS)[number];

/** Money spent in one month, `YYYY-MM`. */
export interface MonthAmount {
  readonly month: string;
  readonly amount: Cents;
}

/** What a form needs to know of a line beyond its stage and elements; all of it is optional. */
export interface FormHints {
  /** Travel of the grantee's own people. */
  readonly travel?: boolean;
  /** Land, a lease or a berth: rent stands outside the base of indirect cost. */
  readonly rent?: boolean;
  /** The price of one piece of what is bought, which decides between equipment and supply. */
  readonly unitCost?: Cents;
  /** The part of labour that is fringe benefits and payroll burden. */
  readonly fringe?: Cents;
  /** The contract the line belongs to; lines of one contract are classed together. */
  readonly contractId?: string;
  /** A credit for scrap that the contractor keeps: a lower price, never program income. */
  readonly scrapCredit?: boolean;
  /** A donated good or service, valued; nobody is paid for it. */
  readonly inKind?: boolean;
}

/**
 * One line of the estimate as the three books need it: amounts at the month of spending, in cents.
 * `total` is the sum of the elements and the sum of the months.
 */
export interface EstimateLine extends FormHints {
  readonly id: string;
  readonly stage: Stage;
  readonly title: string;
  readonly amounts: Readonly<Record<Element, Cents>>;
  readonly total: Cents;
  /** Contract work at the contractor's price, or the owner's own cost. */
  readonly contract: boolean;
  readonly basis: Basis;
  readonly source: string;
  /** Where its own rates come from, or its quote; absent for a line that has none, as a haul. */
  readonly rateSource?: string;
  readonly year?: number;
  /** Quantity times rate in words, such as `148,000 gal at $0.52 a gal`. */
  readonly workings?: string;
  readonly months: readonly MonthAmount[];
}

/** The contract of a contract line that names none. */
export const UNNAMED_CONTRACT = 'main-contract';

/** The contract a contract line belongs to. */
export function contractIdOf(line: EstimateLine): string {
  return line.contractId ?? UNNAMED_CONTRACT;
}
