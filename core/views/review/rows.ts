import type { Sentence, TableRows } from '../rows';

/** One practice of a guide and how far it is met. */
export interface PracticeLine {
  readonly id: string;
  readonly practice: string;
  readonly standing: 'met' | 'partly' | 'not met' | 'cannot tell';
  readonly evidence: readonly string[];
  /** How many more sentences of evidence there are. */
  readonly more: string;
  readonly remedy: string;
}

export interface PracticeGuide {
  readonly title: string;
  readonly counts: string;
  readonly lines: readonly PracticeLine[];
}

/** A point on the line of growth: budget over estimate. */
export interface GrowthMark {
  readonly at: number;
  readonly text: string;
}

export interface ReviewView {
  readonly practicesSentence: Sentence;
  readonly guides: readonly PracticeGuide[];
  readonly classSentence: Sentence;
  readonly classNote: string;
  readonly growthSentence: Sentence;
  readonly growth: { readonly past: readonly GrowthMark[]; readonly own: GrowthMark | undefined } | undefined;
  readonly cases: TableRows;
  readonly likeHulls: TableRows;
  readonly recordSentence: Sentence;
  /** Approval, baseline, independent estimate, lessons. */
  readonly record: readonly TableRows[];
}
