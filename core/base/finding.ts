/** How much a finding matters: `blocks` withholds the figure concerned, `warns` asks for a look, `notes` informs. */
export type FindingWeight = 'blocks' | 'warns' | 'notes';

/**
 * A problem in the user's data: returned, never thrown, and all of them together. The figure concerned is
 * absent, never zero.
 */
export interface Finding {
  /** Stable key of the rule, such as `document/unknown-field`; the catalogue has a page for each. */
  readonly code: string;
  readonly weight: FindingWeight;
  /** Where: a path in the document such as `/vessel/length`, or the place in an imported file. */
  readonly place: string;
  /** What is so, with the value and its unit. */
  readonly message: string;
  /** What it means for the estimate, when that is not plain from the message. */
  readonly meaning?: string;
  /** What to do about it. */
  readonly remedy: string;
  /** The published rule it rests on, when there is one. */
  readonly rule?: string;
}

/** Whether any of the findings withholds a figure. */
export function anyBlocks(findings: readonly Finding[]): boolean {
  return findings.some(finding => finding.weight === 'blocks');
}
