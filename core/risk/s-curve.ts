import { orderStatistic } from './percentiles';

/** One point of an S-curve: this share of the runs does not exceed this value. */
export interface SCurvePoint {
  readonly share: number;
  readonly value: number;
}

/** The S-curve of the trials at 1, 2, ... 99 in 100 and at both ends. */
export function sCurve(rising: Float64Array): SCurvePoint[] {
  if (rising.length === 0) return [];
  const shares = Array.from({ length: 101 }, (_, i) => i / 100);
  return shares.map(share => ({ share, value: orderStatistic(rising, share) }));
}
