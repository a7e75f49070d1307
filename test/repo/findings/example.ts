/** What a finding, or a problem of the shell, says. A problem of the shell has no place in a document and no weight. */
export interface Told {
  readonly code: string;
  readonly weight?: string;
  readonly place?: string;
  readonly message: string;
  readonly meaning?: string | undefined;
  readonly remedy: string;
}

/** The smallest thing that brings one finding about. */
export interface FindingExample {
  readonly code: string;
  /** What is done, in words: one edit of the document of the example, or one small call. */
  readonly tiny: string;
  readonly make: () => readonly Told[] | Promise<readonly Told[]>;
}

/** Rows of a table of examples: code, words, and what to do. */
export function examples(
  ...rows: readonly (readonly [string, string, FindingExample['make']])[]
): FindingExample[] {
  return rows.map(([code, tiny, make]) => ({ code, tiny, make }));
}
