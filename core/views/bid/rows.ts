import type { BidChoices } from '../../project';
import type { Sentence, TableRows } from '../rows';

export interface BidRows {
  readonly sentence: Sentence;
  /** Why there is no bid, when there is none. */
  readonly missing: readonly string[];
  /** The sheet that leaves: prices alone. */
  readonly sheet: TableRows;
  /** Who bids, and the terms of the offer. */
  readonly offer: TableRows;
  readonly alternates: TableRows;
  /** The sheet that stays: each item with its lines and elements. */
  readonly inside: TableRows;
  /** From direct cost to the price, mark-ups in their order. */
  readonly buildUp: TableRows;
  readonly reconciliation: TableRows | undefined;
  /** The items as the owner decides them. */
  readonly items: TableRows;
  /** Items to begin with; nothing where there are some. */
  readonly begin: BidChoices | undefined;
  readonly margin: Sentence;
  /** What the build-up does not hold, in words. */
  readonly outside: string;
  readonly comparison: BidComparisonRows | undefined;
  readonly bidders: readonly TableRows[];
  readonly findings: readonly string[];
}

/** Bids received beside the estimate. */
export interface BidComparisonRows {
  readonly sentence: Sentence;
  readonly table: TableRows;
  readonly totals: TableRows;
  readonly findings: readonly string[];
}
