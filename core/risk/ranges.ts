import type { Basis, Finding, Provenance } from '../base';
import { distributionFindings, type Distribution } from './distributions';

/** How far a value may lie from the likely one, as shares of it, where nobody gave a range. */
export interface DefaultRange extends Provenance {
  readonly below: number;
  readonly above: number;
}

const judged = (below: number, above: number, why: string): DefaultRange => ({
  below,
  above,
  basis: 'judgement',
  source: `Reefwright default: ${why}`,
  year: 2026,
});

/**
 * The range of a given by its basis, where the user gave none: narrow for what was surveyed, wide and leaning
 * upwards for what was judged. Every one can be overridden.
 */
export const DEFAULT_RANGES: Readonly<Record<Basis, DefaultRange>> = {
  quoted: judged(0, 0.05, 'a quotation holds, but for extras'),
  surveyed: judged(0.05, 0.1, 'counted or measured on board'),
  published: judged(0.15, 0.25, 'a published figure of other ships or places'),
  'common practice': judged(0.15, 0.3, 'usual in the trade, not of this ship'),
  judgement: judged(0.25, 0.5, 'nobody has checked it'),
  'from memory': judged(0.25, 0.6, 'remembered, source not at hand'),
  'invented for the demo': judged(0.25, 0.5, 'stands for a figure that was judged'),
};

/** A range as the document gives it; what is missing follows from the basis. */
export interface RangeGiven {
  readonly likely: number;
  readonly low?: number;
  readonly high?: number;
  readonly basis: Basis;
  /** Default triangular: it says no more than the three numbers do. */
  readonly shape?: 'triangular' | 'pert' | 'uniform';
}

/**
 * The distribution of a given.
 * @param place where it stands in the document, for the finding.
 * @returns the distribution, or the finding when low, likely and high do not rise.
 * @example distributionOf({ likely: 100, basis: 'surveyed' }, '/x') // triangular 95, 100, 110
 */
export function distributionOf(given: RangeGiven, place: string): Distribution | Finding {
  const { below, above } = DEFAULT_RANGES[given.basis];
  const size = Math.abs(given.likely);
  const low = given.low ?? Math.min(given.likely - below * size, given.high ?? Infinity);
  const high = given.high ?? Math.max(given.likely + above * size, low);
  const kind = given.shape ?? 'triangular';
  const all: Distribution = { kind: 'triangular', low, likely: given.likely, high };
  const [finding] = distributionFindings(all, place);
  if (finding !== undefined) return finding;
  return kind === 'uniform' ? { kind, low, high } : { kind, low, likely: given.likely, high };
}
