import { normalQuantile } from './numeric/normal-quantile';
import { cholesky, solveLower, type Matrix } from './numeric/cholesky';

/**
 * Gives the columns of one chunk the correlation asked for by changing only the order of the trials: each
 * column keeps its own values. On entry `orders[j]` is a random permutation of the strata; on return it is the
 * permutation that goes with the target. The correlation holds for normal scores; the one of ranks is then
 * (6/pi) asin(r/2).
 * @param target positive definite, unit diagonal.
 * @source R. L. Iman, W. J. Conover, Commun. Statist. Simula. Computa. B11 (1982) 311-334.
 */
export function imanConover(orders: readonly Uint16Array[], n: number, target: Matrix): void {
  const wanted = cholesky(target);
  if (wanted === undefined) return;
  const byStratum = vanDerWaerden(n);
  const scores = orders.map(order => inTrialOrder(byStratum, order));
  const found = n > 2 * orders.length ? cholesky(correlationOf(scores, n)) : undefined;
  const row = new Array<number>(orders.length).fill(0);
  const mixed = orders.map(() => new Float64Array(n));
  for (let t = 0; t < n; t++) {
    for (let j = 0; j < row.length; j++) row[j] = scores[j]?.[t] ?? Number.NaN;
    const free = found === undefined ? row : solveLower(found, row);
    for (const [j, weights] of wanted.entries()) {
      let sum = 0;
      for (const [k, weight] of weights.entries()) sum += weight * (free[k] ?? Number.NaN);
      const column = mixed[j];
      if (column !== undefined) column[t] = sum;
    }
  }
  mixed.forEach((column, j) => rank(column, orders[j]));
}

/** Van der Waerden scores of the strata, lowest first. */
function vanDerWaerden(n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, s) => normalQuantile((s + 1) / (n + 1)));
}

function inTrialOrder(scores: Float64Array, order: Uint16Array): Float64Array {
  return Float64Array.from(scores, (_, t) => scores[order[t] ?? 0] ?? Number.NaN);
}

function correlationOf(columns: readonly Float64Array[], n: number): number[][] {
  const square = columns.map(c => product(c, c, n));
  return columns.map((a, i) =>
    columns.map((b, j) => (i === j ? 1 : product(a, b, n) / Math.sqrt((square[i] ?? 0) * (square[j] ?? 0)))),
  );
}

function product(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let t = 0; t < n; t++) sum += (a[t] ?? 0) * (b[t] ?? 0);
  return sum;
}

/** Writes the rank (0 = lowest) of each trial's value. */
function rank(values: Float64Array, ranks: Uint16Array | undefined): void {
  const trials = Uint16Array.from({ length: values.length }, (_, t) => t);
  trials.sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0) || a - b);
  trials.forEach((trial, position) => {
    if (ranks !== undefined) ranks[trial] = position;
  });
}
