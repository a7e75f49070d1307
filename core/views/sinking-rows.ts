import type { Sentence, TableRows, Verdict } from './rows';

/** One moment of the sinking as it is drawn, in metres and degrees, with its words. */
export interface DrawnStage {
  readonly t: number;
  readonly level: number;
  readonly draught: number;
  /** Heel to draw, past the check the list of the simulation; undefined when no balance exists. */
  readonly heel: number | undefined;
  /** Greatest heel of the check for the curve, 60 where no balance exists; undefined where it judges nothing. */
  readonly worst: number | undefined;
  readonly list: number;
  readonly time: string;
  readonly heelWords: string;
  readonly worstWords: string;
  readonly levelWords: string;
  readonly listWords: string;
  readonly event: string;
}

/** The upright screen: screening, not a naval architect's study. */
export interface SinkingView {
  readonly sentence: Sentence;
  readonly verdict: Verdict;
  readonly reasons: readonly string[];
  readonly beam: number;
  readonly depth: number;
  /** Moments drawn side by side. */
  readonly strip: readonly DrawnStage[];
  /** How the last sections are drawn and what is not worked out of them; empty where the check follows her to the end. */
  readonly stripNote: string;
  /** All moments, for the curves. */
  readonly curve: readonly DrawnStage[];
  readonly timeTicks: readonly { readonly at: number; readonly text: string }[];
  readonly heelTicks: readonly { readonly at: number; readonly text: string }[];
  readonly levelTicks: readonly { readonly at: number; readonly text: string }[];
  readonly levelUnit: string;
  readonly stages: TableRows;
  readonly sizing: TableRows;
  readonly choices: TableRows;
  readonly choicesMessage: string;
  /** Work items that follow from the sizes of the openings. */
  readonly openingWork: TableRows;
  /** Values of public rules as context, no approval. */
  readonly yardsticks: TableRows;
  readonly afterDeckEdge: readonly string[];
  readonly missingInputs: readonly string[];
  /** The one measurement that would settle "cannot tell", with its price; empty otherwise. */
  readonly settles: string;
  readonly caution: string;
  readonly cannotSee: readonly string[];
  readonly words: string;
}
