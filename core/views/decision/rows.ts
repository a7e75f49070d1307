import type { Sentence, TableRows } from '../rows';
import type { Whys } from '../simulated';

/** The one page a board votes on. */
export interface DecisionRows {
  /** How each figure came about, by its name. */
  readonly whys: Whys;
  readonly sentence: Sentence;
  /** The letter the page is about. */
  readonly letter: string;
  readonly recommended:
    | {
        readonly scenario: string;
        readonly letter: string;
        readonly title: string;
        readonly isBoardsChoice: boolean;
      }
    | undefined;
  readonly reasons: readonly string[];
  /** What to know beside them; empty when there is nothing. */
  readonly besides: string;
  /** Set when the scenario shown is not the one recommended. */
  readonly notThisOne: string;
  readonly figures: TableRows;
  readonly county: TableRows;
  readonly troubles: readonly { readonly title: string; readonly happens: string; readonly pays: string }[];
  readonly notStudied: readonly string[];
  readonly others: TableRows;
  readonly dates: TableRows;
  readonly choice: TableRows;
  readonly caution: string;
}
