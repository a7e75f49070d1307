import type { Funding } from '../../project';
import type { Sentence, TableRows } from '../rows';

/** One award with its form, and every line of it tied out. */
export interface AwardView {
  readonly id: string;
  readonly title: string;
  readonly form: string;
  /** Section B of SF-424A, or lines 1 to 17 of SF-424C. */
  readonly table: TableRows;
  /** The other sections of the form. */
  readonly sections: readonly TableRows[];
  /** Form line, estimate line behind it, narrative sentence, difference. */
  readonly tieOut: TableRows;
}

/** A month of the cash picture, in whole dollars from the start. */
export interface CashPoint {
  readonly month: string;
  readonly text: string;
  readonly year: string;
  readonly paid: number;
  readonly paidSoFar: number;
  /** What came in so far, with the owner’s own share of what was paid. */
  readonly inSoFar: number;
  readonly words: string;
}

export interface CashPicture {
  readonly title: string;
  readonly points: readonly CashPoint[];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly worst: { readonly at: number; readonly text: string } | undefined;
  readonly comeIn: string;
  /** What the months after those drawn hold. */
  readonly after: string;
  readonly words: string;
}

export interface FundingView {
  readonly sentence: Sentence;
  /** Why there are no books, when there are none. */
  readonly missing: readonly string[];
  /** A funding section to begin with, when the project has none. */
  readonly begin: Funding | undefined;
  readonly awards: readonly AwardView[];
  readonly sources: TableRows;
  readonly reconciliations: readonly TableRows[];
  readonly cash: CashPicture | undefined;
  readonly cashTable: TableRows;
  readonly contracts: TableRows;
  readonly beside: TableRows;
  /** What the reader decides: sources, terms, indirect cost, contingency. */
  readonly terms: readonly TableRows[];
  /** What else is to be known of the forms: cost that no grant bears, and why. */
  readonly findings: readonly string[];
}
