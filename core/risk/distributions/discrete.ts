import { at, valueAt } from '../../base';
import type { DistributionOf } from './distribution';
import type { KindRecord } from './kind';

/** A short list of values, each with its probability; values need not be in order. */
export const discrete: KindRecord<'discrete'> = {
  quantile: (d, p) => discrete.sampler(d)(p),
  mean: d => d.values.reduce((sum, value, i) => sum + value * at(d.probabilities, i), 0),
  variance(d) {
    const mean = discrete.mean(d);
    return d.values.reduce((sum, value, i) => sum + (value - mean) ** 2 * at(d.probabilities, i), 0);
  },
  mode: d => at(d.values, d.probabilities.indexOf(Math.max(...d.probabilities))),
  sampler(d) {
    const { values, upTo } = ladder(d);
    const last = values.length - 1;
    return u => {
      let i = 0;
      while (i < last && u > valueAt(upTo, i)) i++;
      return valueAt(values, i);
    };
  },
  problem(d) {
    if (d.values.length === 0 || d.values.length !== d.probabilities.length)
      return 'values and probabilities do not pair up';
    if (!d.values.every(Number.isFinite)) return 'a value is not a finite number';
    if (!d.probabilities.every(p => p >= 0 && p <= 1)) return 'a probability is outside 0 to 1';
    const sum = d.probabilities.reduce((a, b) => a + b, 0);
    return Math.abs(sum - 1) > 1e-9 ? `the probabilities add up to ${sum}, not to 1` : undefined;
  },
};

/** The values in rising order and the probability up to and including each. */
function ladder(d: DistributionOf<'discrete'>) {
  const order = d.values.map((_, i) => i).sort((a, b) => at(d.values, a) - at(d.values, b));
  let sum = 0;
  return {
    values: Float64Array.from(order, i => at(d.values, i)),
    upTo: Float64Array.from(order, i => (sum += at(d.probabilities, i))),
  };
}
