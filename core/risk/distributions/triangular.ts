import { valueAt } from '../../base';
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
  kernel({ low, likely, high }) {
    const span = high - low;
    if (span === 0) return (_, out, n) => void out.fill(likely, 0, n);
    const peak = (likely - low) / span;
    const rising = span * (likely - low);
    const falling = span * (high - likely);
    return (levels, out, n) => drawTriangular(levels, out, n, { low, high, peak, rising, falling });
  },
  problem: d => orderProblem(d.low, d.likely, d.high),
};

interface Sides {
  readonly low: number;
  readonly high: number;
  /** Share of outcomes below the likely value. */
  readonly peak: number;
  readonly rising: number;
  readonly falling: number;
}

function drawTriangular(levels: Float64Array, out: Float64Array, n: number, sides: Sides): void {
  const { low, high, peak, rising, falling } = sides;
  for (let t = 0; t < n; t++) {
    const u = valueAt(levels, t);
    out[t] = u < peak ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling);
  }
}
