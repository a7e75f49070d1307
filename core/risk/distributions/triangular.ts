import { orderProblem, type KindRecord } from './kind';

/**
 * Triangular: likelihood rises in a straight line from low to likely and falls in one to high.
 * @source N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions vol. 2, 1995, section 26.9.
 */
export const triangular: KindRecord<'triangular'> = {
  quantile: (d, p) => triangular.sampler(d)(p),
  mean: d => (d.low + d.likely + d.high) / 3,
  variance: ({ low: a, likely: m, high: b }) => ((b - a) ** 2 + (m - a) * (m - b)) / 18,
  mode: d => d.likely,
  sampler({ low, likely, high }) {
    const span = high - low;
    if (span === 0) return () => likely;
    const peak = (likely - low) / span;
    const rising = span * (likely - low);
    const falling = span * (high - likely);
    return u => (u < peak ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling));
  },
  problem: d => orderProblem(d.low, d.likely, d.high),
};
