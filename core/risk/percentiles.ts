import { valueAt } from '../base';
/** A percentile of the trials with the interval that holds the true one in 95 of 100 runs. */
export interface Percentile {
  /** The share, 0 to 1. */
  readonly share: number;
  /** A value that occurred in a trial: dollars to the cent, or a day number. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Standard normal value of a two-sided 95 % interval. */
const NORMAL_95 = 1.96;

/** The finite values in rising order. Trials without an answer are left out, and counted elsewhere. */
export function sorted(values: Float64Array): Float64Array {
  return values.filter(Number.isFinite).sort();
}

/** The smallest value that at least the share `q` of the trials does not exceed; NaN without trials. */
export function orderStatistic(rising: Float64Array, q: number): number {
  return at(rising, Math.ceil(rising.length * q - 1e-9));
}

/**
 * Ranks (1 = lowest) of the distribution-free interval of a percentile: N q +- 1.96 sqrt(N q (1 - q)).
 * Latin hypercube draws make it wider than need be, never narrower in the mean.
 * @source W. J. Conover, Practical Nonparametric Statistics, 3rd ed. 1999, section 3.2.
 */
export function intervalRanks(trials: number, q: number): { low: number; high: number } {
  const half = NORMAL_95 * Math.sqrt(trials * q * (1 - q));
  return {
    low: Math.max(1, Math.floor(trials * q - half)),
    high: Math.min(trials, Math.ceil(trials * q + half)),
  };
}

/** One percentile with its interval. */
export function percentile(rising: Float64Array, share: number): Percentile {
  const ranks = intervalRanks(rising.length, share);
  return {
    share,
    value: orderStatistic(rising, share),
    low: at(rising, ranks.low),
    high: at(rising, ranks.high),
  };
}

/** The share of trials that do not exceed a value: the percentile a figure stands at. */
export function shareUpTo(rising: Float64Array, value: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (valueAt(rising, middle) <= value) low = middle + 1;
    else high = middle;
  }
  return rising.length === 0 ? Number.NaN : low / rising.length;
}

function at(rising: Float64Array, rank: number): number {
  return rising[Math.min(Math.max(rank, 1), rising.length) - 1] ?? Number.NaN;
}
