import type { Sentence, TableRows } from '../rows';

/** A material of concern as its reader needs it: what must become of it, where to look, what proves it. */
export interface MaterialWords {
  readonly id: string;
  readonly title: string;
  readonly goal: string;
  readonly found: readonly string[];
  readonly steps: readonly string[];
  readonly evidence: readonly string[];
  /** Whether it is taken to be there, and why. */
  readonly presence: Sentence;
}

/** A caution: the danger, the usual care, who decides. */
export interface CautionWords {
  readonly id: string;
  readonly work: string;
  readonly danger: string;
  readonly care: string;
  readonly decides: string;
  readonly pointer: string;
}

/** A family of materials with its goal, its rules and its dangers. */
export interface FamilyWords {
  readonly id: string;
  readonly title: string;
  readonly goal: string;
  readonly goalBasis: string;
  readonly materials: readonly MaterialWords[];
  readonly tripPoints: TableRows;
  readonly cautions: readonly CautionWords[];
}

export interface MaterialsView {
  readonly sentence: Sentence;
  readonly table: TableRows;
  /** The family of each row of the table, by the subject of the row. */
  readonly familyOf: Readonly<Record<string, string>>;
  readonly families: readonly FamilyWords[];
  readonly laboratory: TableRows;
  readonly intake: TableRows;
  readonly intakeWords: string;
  /** Goals that the scenario leaves unmet, in words. */
  readonly unmet: readonly string[];
  readonly closing: string;
}
