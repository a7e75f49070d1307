import { beta, betaQuantile, type Beta } from '../numeric/beta';
import { betaTable } from '../numeric/beta-table';
import type { DistributionOf } from './distribution';
import { orderProblem, type KindRecord } from './kind';

/** How many times the likely value outweighs an end in the mean. */
const LIKELY_WEIGHT = 4;

/**
 * PERT: a beta distribution between low and high with the mean (low + 4 likely + high) / 6. Its variance is
 * the exact one of that beta, (mean - low)(high - mean) / 7, not the older rule of a sixth of the range squared.
 * @source D. G. Malcolm et al., Operations Research 7 (1959) 646-669; D. Vose, Risk Analysis, 2008 (exact moments).
 */
export const pert: KindRecord<'pert'> = {
  quantile: (d, p) => (d.high === d.low ? d.likely : d.low + (d.high - d.low) * betaQuantile(shape(d), p)),
  mean: d => (d.low + LIKELY_WEIGHT * d.likely + d.high) / (LIKELY_WEIGHT + 2),
  variance(d) {
    const mean = pert.mean(d);
    return ((mean - d.low) * (d.high - mean)) / (LIKELY_WEIGHT + 3);
  },
  mode: d => d.likely,
  sampler(d) {
    const span = d.high - d.low;
    if (span === 0) return () => d.likely;
    const { of } = betaTable(shape(d));
    return u => d.low + span * of(u);
  },
  kernel(d) {
    const range = { low: d.low, span: d.high - d.low };
    if (range.span === 0) return (_, out, n) => void out.fill(d.likely, 0, n);
    const { fill } = betaTable(shape(d));
    return (levels, out, n) => {
      fill(levels, out, n, range);
    };
  },
  problem: d => orderProblem(d.low, d.likely, d.high),
};

function shape({ low, likely, high }: DistributionOf<'pert'>): Beta {
  const peak = (likely - low) / (high - low);
  return beta(1 + LIKELY_WEIGHT * peak, 1 + LIKELY_WEIGHT * (1 - peak));
}
