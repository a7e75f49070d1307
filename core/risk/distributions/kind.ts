import type { DistributionKind, DistributionOf } from './distribution';

/** Turns the first `n` levels (0 to 1) into values. */
export type DrawKernel = (levels: Float64Array, out: Float64Array, n: number) => void;

/** What a kind of distribution can do. One record for each kind. */
export interface KindRecord<K extends DistributionKind> {
  /** The value that a share `p` (0 to 1) of the outcomes does not exceed. */
  quantile(d: DistributionOf<K>, p: number): number;
  mean(d: DistributionOf<K>): number;
  variance(d: DistributionOf<K>): number;
  /** The most likely value. */
  mode(d: DistributionOf<K>): number;
  /** The quantile as a fast function for many draws; within 1e-6 of the range of the exact one. */
  sampler(d: DistributionOf<K>): (u: number) => number;
  /** Draws many at once, when that is faster than one by one. */
  kernel?(d: DistributionOf<K>): DrawKernel;
  /** What is wrong with the numbers, in words, or nothing. */
  problem(d: DistributionOf<K>): string | undefined;
}

/** Says in words why a low, likely and high do not belong together, or nothing. */
export function orderProblem(low: number, likely: number, high: number): string | undefined {
  if (![low, likely, high].every(Number.isFinite)) return 'a value is not a finite number';
  if (low > likely) return `the low value ${low} is above the likely value ${likely}`;
  if (likely > high) return `the likely value ${likely} is above the high value ${high}`;
  return undefined;
}
