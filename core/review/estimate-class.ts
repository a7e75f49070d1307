import { at, type Basis } from '../base';
import { sumCents, type Cents } from '../cash-flow';
import type { ReviewData } from './data';

/** The class of an estimate and the range that goes with it. */
export interface EstimateClass {
  readonly estimateClass: number;
  /** The share of the total that is surveyed or quoted for this ship. */
  readonly share: number;
  /** The published range of accuracy, as shares of the total: the low end and the high end, each narrow and wide. */
  readonly low: { readonly narrow: number; readonly wide: number };
  readonly high: { readonly narrow: number; readonly wide: number };
  readonly use: string;
  readonly source: string;
}

const DEFINED: readonly Basis[] = ['surveyed', 'quoted'];

/**
 * The class by how much of the money is surveyed or quoted for this ship. The published bands overlap; where two
 * fit, the weaker class is taken. Absent for a total of nothing.
 * @source classes of ASTM E2516 and AACE 18R-97 (numbers only).
 */
export function estimateClass(
  byBasis: Readonly<Record<Basis, Cents>>,
  data: ReviewData,
): EstimateClass | undefined {
  const total = sumCents(Object.values(byBasis));
  if (total <= 0) return undefined;
  const share = sumCents(DEFINED.map(basis => byBasis[basis])) / total;
  const weakestFirst = data.classes.rows.toSorted((a, b) => b.estimateClass - a.estimateClass);
  const row = weakestFirst.find(one => share <= one.to) ?? at(weakestFirst, weakestFirst.length - 1);
  return {
    estimateClass: row.estimateClass,
    share,
    low: { narrow: row.lowestNarrow, wide: row.lowest },
    high: { narrow: row.highestNarrow, wide: row.highest },
    use: row.use,
    source: data.classes.source,
  };
}
