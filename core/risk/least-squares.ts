import { cholesky, solveLower } from './numeric/cholesky';

/** Keeps the normal equations solvable when two terms say the same. */
const RIDGE = 1e-9;

/**
 * Coefficients that bring the sum of the terms closest to the values (least squares, normal equations).
 * @param terms one column a term, as long as the values.
 */
export function leastSquares(terms: readonly Float64Array[], values: Float64Array): number[] {
  const products = terms.map(a => terms.map(b => dot(a, b)));
  const ridge = products.map((row, i) => row.map((x, j) => (i === j ? x * (1 + RIDGE) + RIDGE : x)));
  const lower = cholesky(ridge);
  if (lower === undefined) return terms.map(() => 0);
  const half = solveLower(
    lower,
    terms.map(a => dot(a, values)),
  );
  return solveTransposed(lower, half);
}

function solveTransposed(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x = [...b];
  for (let i = x.length - 1; i >= 0; i--) {
    let rest = x[i] ?? 0;
    for (let k = i + 1; k < x.length; k++) rest -= (lower[k]?.[i] ?? 0) * (x[k] ?? 0);
    x[i] = rest / (lower[i]?.[i] ?? Number.NaN);
  }
  return x;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let t = 0; t < a.length; t++) sum += (a[t] ?? 0) * (b[t] ?? 0);
  return sum;
}
