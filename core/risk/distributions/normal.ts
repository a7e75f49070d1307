import { normalQuantile } from '../numeric/normal-quantile';
import type { KindRecord } from './kind';

/** Normal, for errors that add up from many small ones; it has no lowest value, so seldom fits a quantity. */
export const normal: KindRecord<'normal'> = {
  quantile: (d, p) => d.mean + d.standardDeviation * normalQuantile(p),
  mean: d => d.mean,
  variance: d => d.standardDeviation ** 2,
  mode: d => d.mean,
  sampler({ mean, standardDeviation }) {
    if (standardDeviation === 0) return () => mean;
    return u => mean + standardDeviation * normalQuantile(u);
  },
  problem(d) {
    if (!Number.isFinite(d.mean) || !Number.isFinite(d.standardDeviation))
      return 'a value is not a finite number';
    return d.standardDeviation < 0 ? 'the standard deviation is negative' : undefined;
  },
};
