import type { FrontierPicture } from '../risk/rows';
import type { Sentence, TableRows, Verdict } from '../rows';
import type { Whys } from '../simulated';

/** A scenario of the comparison by its letter. */
export interface ComparedScenario {
  readonly id: string;
  readonly letter: string;
  readonly title: string;
  readonly isChosen: boolean;
  readonly isPermittable: boolean;
  /** Verdict of the upright screen and what stands under it. */
  readonly verdict: Verdict | undefined;
  readonly verdictWords: string;
}

/** One step of a bridge as it is drawn: from and to as shares of the width. */
export interface BridgeBar {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly kind: 'total' | 'adds' | 'saves';
}

/** What separates the first scenario from another, in steps that add up. */
export interface BridgeRows {
  readonly id: string;
  readonly letter: string;
  readonly title: string;
  readonly words: Sentence;
  readonly bars: readonly BridgeBar[];
  readonly table: TableRows;
}

export interface CompareRows {
  /** How each figure came about, by its name. */
  readonly whys: Whys;
  readonly sentence: Sentence;
  readonly scenarios: readonly ComparedScenario[];
  readonly facts: TableRows;
  readonly bridges: readonly BridgeRows[];
  readonly differences: TableRows;
  readonly frontier: FrontierPicture | undefined;
  /** What the runs say of the scenarios against each other. */
  readonly paired: readonly string[];
  readonly hasRuns: boolean;
  /** What running the trials would add; absent when every scenario has trials of its plan. */
  readonly waiting?: string;
  readonly isStale: boolean;
  readonly weights: TableRows;
  readonly ranking: readonly string[];
  /** Weights as they stand, to begin the board’s own from; absent when the board has set its own. */
  readonly usualWeights: readonly { readonly criterion: string; readonly weight: string }[] | undefined;
}
