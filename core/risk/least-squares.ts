import { at, valueAt } from '../base';
import { cholesky, solveLower } from './numeric/cholesky';

/** Keeps the normal equations solvable when two terms say the same. */
const RIDGE = 1e-9;

/**
 * Coefficients that bring the sum of the terms closest to the values (least squares, normal equations).
 * @param terms number of terms; @param rows number of values.
 * @param row fills the terms of one row and gives its value.
 */
export function leastSquares(
  terms: number,
  rows: number,
  row: (i: number, out: Float64Array) => number,
): number[] {
  const products = new Float64Array(terms * terms);
  const withValue = new Float64Array(terms);
  const term = new Float64Array(terms);
  for (let i = 0; i < rows; i++) {
    const value = row(i, term);
    for (let a = 0; a < terms; a++) {
      const own = valueAt(term, a);
      if (own === 0) continue;
      withValue[a] = valueAt(withValue, a) + own * value;
      for (let b = 0; b <= a; b++) {
        const place = a * terms + b;
        products[place] = valueAt(products, place) + own * valueAt(term, b);
      }
    }
  }
  const sum = (a: number, b: number) => valueAt(products, Math.max(a, b) * terms + Math.min(a, b));
  const ridge = Array.from({ length: terms }, (_, i) =>
    Array.from({ length: terms }, (__, j) => (i === j ? sum(i, i) * (1 + RIDGE) + RIDGE : sum(i, j))),
  );
  const lower = cholesky(ridge);
  return lower === undefined
    ? [...withValue.fill(0)]
    : solveTransposed(lower, solveLower(lower, [...withValue]));
}

function solveTransposed(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x = [...b];
  for (let i = x.length - 1; i >= 0; i--) {
    let rest = at(x, i);
    for (let k = i + 1; k < x.length; k++) rest -= at(at(lower, k), i) * at(x, k);
    x[i] = rest / at(at(lower, i), i);
  }
  return x;
}
