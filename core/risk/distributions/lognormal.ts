import { normalQuantile } from '../numeric/normal-quantile';
import type { Distribution } from './distribution';
import type { KindRecord } from './kind';

/** Lognormal: the logarithm is normal. For ratios and growth, which multiply rather than add. */
export const lognormal: KindRecord<'lognormal'> = {
  quantile: (d, p) => Math.exp(d.logMean + d.logStandardDeviation * normalQuantile(p)),
  mean: d => Math.exp(d.logMean + d.logStandardDeviation ** 2 / 2),
  variance: d =>
    Math.expm1(d.logStandardDeviation ** 2) * Math.exp(2 * d.logMean + d.logStandardDeviation ** 2),
  mode: d => Math.exp(d.logMean - d.logStandardDeviation ** 2),
  sampler({ logMean, logStandardDeviation }) {
    if (logStandardDeviation === 0) return () => Math.exp(logMean);
    return u => Math.exp(logMean + logStandardDeviation * normalQuantile(u));
  },
  problem(d) {
    if (!Number.isFinite(d.logMean) || !Number.isFinite(d.logStandardDeviation))
      return 'a value is not a finite number';
    return d.logStandardDeviation < 0 ? 'the standard deviation of the logarithm is negative' : undefined;
  },
};

/** The lognormal with the given P10 and P90, both above zero. */
export function lognormalFromP10P90(p10: number, p90: number): Distribution {
  const logMean = (Math.log(p10) + Math.log(p90)) / 2;
  return {
    kind: 'lognormal',
    logMean,
    logStandardDeviation: (Math.log(p90) - logMean) / normalQuantile(0.9),
  };
}
