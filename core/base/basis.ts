/**
 * Where a given number comes from. The order is from the strongest to the weakest: an element of a line
 * takes the weakest basis among the givens multiplied into it.
 */
export const BASES = [
  'quoted',
  'surveyed',
  'published',
  'common practice',
  'judgement',
  'from memory',
  'invented for the demo',
] as const;

export type Basis = (typeof BASES)[number];

/** The bases nobody has checked: their share of the total is the share not yet checked. */
export const UNCHECKED_BASES: readonly Basis[] = ['judgement', 'from memory', 'invented for the demo'];

/** The weaker of two bases. */
export function weakerBasis(a: Basis, b: Basis): Basis {
  return BASES.indexOf(a) >= BASES.indexOf(b) ? a : b;
}

/** Where a given number comes from: its basis, the words for its source, and the year the source speaks of. */
export interface Provenance {
  readonly basis: Basis;
  readonly source: string;
  readonly year?: number;
}
