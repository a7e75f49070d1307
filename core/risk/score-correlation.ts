import { valueAt } from '../base';
import { meanOf, samplerOf, varianceOf, type Distribution } from './distributions';
import { normalQuantile } from './numeric/normal-quantile';

/** Terms of the expansion in Hermite polynomials, and points of the integral over the levels. */
const TERMS = 16;
const POINTS = 2000;

/**
 * The correlation of normal scores that gives two ranges the correlation asked for of their values (Pearson).
 * Mehler: the correlation of the values is the sum of a_k b_k r^k, with the Hermite coefficients of each range.
 * @param a, b the hermiteCoefficients of the two ranges.
 * @returns between -1 and 1; NaN when no correlation of scores gives the one asked for.
 * @source M. C. Cario, B. L. Nelson, Modeling and generating random vectors with arbitrary marginal
 *   distributions and correlation matrix, Northwestern University, 1997.
 */
export function scoresForValues(a: Float64Array, b: Float64Array, asked: number): number {
  const valuesAt = (r: number) => a.reduce((sum, x, k) => sum + x * valueAt(b, k) * r ** (k + 1), 0);
  let low = -1;
  let high = 1;
  if (asked < valuesAt(low) || asked > valuesAt(high)) return Number.NaN;
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (valuesAt(middle) < asked) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The correlation of normal scores that gives the rank correlation asked for. @source K. Pearson, 1907. */
export function scoresForRanks(asked: number): number {
  return 2 * Math.sin((Math.PI / 6) * asked);
}

/** Coefficients 1, 2, ... of the standardised quantile of the normal level, each over the root of k factorial. */
export function hermiteCoefficients(d: Distribution): Float64Array {
  const [mean, deviation] = [meanOf(d), Math.sqrt(varianceOf(d))];
  const draw = samplerOf(d);
  const sums = new Float64Array(TERMS);
  for (let i = 0; i < POINTS; i++) {
    const level = (i + 0.5) / POINTS;
    const z = normalQuantile(level);
    const value = (draw(level) - mean) / deviation / POINTS;
    let before = 1;
    let now = z;
    for (let k = 1; k <= TERMS; k++) {
      sums[k - 1] = valueAt(sums, k - 1) + value * now;
      const next = (z * now - Math.sqrt(k) * before) / Math.sqrt(k + 1);
      before = now;
      now = next;
    }
  }
  return sums;
}
