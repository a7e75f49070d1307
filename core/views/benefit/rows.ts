import type { Benefits } from '../../project';
import type { Sentence, TableRows } from '../rows';

/** What the reef is worth against what it costs, how long the hull lasts, and what binds the county afterwards. */
export interface BenefitRows {
  readonly sentence: Sentence;
  /** What is still missing for a benefit case, each with what to do. */
  readonly missing: readonly string[];
  /** A section to begin with, when the project has none. */
  readonly begin: Benefits | undefined;
  /** Low, likely and high; nothing while an input is missing. */
  readonly figures: TableRows | undefined;
  /** The plate, the rate and the years, and who comes; nothing until the section is begun. */
  readonly inputs: { readonly terms: TableRows; readonly uses: TableRows } | undefined;
  readonly life: Sentence;
  readonly obligations: TableRows;
  /** The section with the usual obligations written down, so that they can be changed; nothing when they are. */
  readonly own: Benefits | undefined;
}
