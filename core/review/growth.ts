import type { Cents } from '../cash-flow';
import type { GrowthData } from './data';

/** The contingency beside the recorded growth of past hulls. */
export interface GrowthView {
  /** Budget over estimate. */
  readonly factor: number;
  readonly least: number;
  readonly median: number;
  readonly most: number;
  /** The least growth of those that grew. */
  readonly leastGrowth: number;
  /** What the estimate would come to if it grew like the least, the middle and the most. */
  readonly atLeast: Cents;
  readonly atMedian: Cents;
  readonly atMost: Cents;
  /** Taken in cents: a contingency of exactly the middle growth is not below it. */
  readonly isBelowMedian: boolean;
}

/**
 * Contingency shown against what past hulls grew by, from a middle estimate to the end. A finding is due when it
 * covers less than the middle of the recorded cases.
 */
export function growthView(total: Cents, contingency: Cents, growth: GrowthData): GrowthView {
  const factors = growth.growth.map(one => Number(one.factor)).toSorted((a, b) => a - b);
  const [least, most] = [Math.min(...factors), Math.max(...factors)];
  const median = middleOf(factors);
  const factor = total > 0 ? (total + contingency) / total : 1;
  return {
    factor,
    least,
    median,
    most,
    leastGrowth: factors.find(one => one > 1) ?? most,
    atLeast: Math.round(total * least),
    atMedian: Math.round(total * median),
    atMost: Math.round(total * most),
    isBelowMedian: total + contingency < Math.round(total * median),
  };
}

/** The middle of sorted factors, of an even count the mean of two, settled to hundredths as they are recorded. */
function middleOf(sorted: readonly number[]): number {
  const half = sorted.length / 2;
  const middle = sorted.slice(Math.ceil(half) - 1, Math.floor(half) + 1);
  return Math.round((middle.reduce((sum, factor) => sum + factor, 0) / middle.length) * 100) / 100;
}
