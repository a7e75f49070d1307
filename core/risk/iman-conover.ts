import { at, valueAt, wholeAt } from '../base';
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
  const mix = wanted.map(row => mixOf(row, found, orders.length));
  for (const [j, order] of orders.entries()) {
    const mixed = new Float64Array(n);
    scores.forEach((column, k) => {
      const weight = at(at(mix, j), k);
      for (let t = 0; t < n; t++) mixed[t] = valueAt(mixed, t) + weight * valueAt(column, t);
    });
    rank(mixed, order);
  }
}

/** The weights of the scores in one column: a row of the wanted factor over the factor found. */
function mixOf(wanted: readonly number[], found: Matrix | undefined, count: number): number[] {
  if (found === undefined) return Array.from({ length: count }, (_, k) => wanted[k] ?? 0);
  return Array.from({ length: count }, (_, k) => {
    const unit = Array.from({ length: count }, (__, i) => (i === k ? 1 : 0));
    return solveLower(found, unit).reduce((sum, x, i) => sum + x * (wanted[i] ?? 0), 0);
  });
}

/** Van der Waerden scores of the strata, lowest first. */
function vanDerWaerden(n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, s) => normalQuantile((s + 1) / (n + 1)));
}

function inTrialOrder(scores: Float64Array, order: Uint16Array): Float64Array {
  return Float64Array.from(scores, (_, t) => valueAt(scores, wholeAt(order, t)));
}

function correlationOf(columns: readonly Float64Array[], n: number): number[][] {
  const square = columns.map(c => product(c, c, n));
  return columns.map((a, i) =>
    columns.map((b, j) => (i === j ? 1 : product(a, b, n) / Math.sqrt(at(square, i) * at(square, j)))),
  );
}

function product(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let t = 0; t < n; t++) sum += valueAt(a, t) * valueAt(b, t);
  return sum;
}

/** Writes the rank (0 = lowest) of each trial's value; of equal ones the earlier trial comes first. */
function rank(values: Float64Array, ranks: Uint16Array): void {
  const rising = values.slice().sort();
  const taken = new Uint8Array(values.length);
  for (let t = 0; t < values.length; t++) {
    const value = valueAt(values, t);
    let [low, high] = [0, values.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (valueAt(rising, middle) < value) low = middle + 1;
      else high = middle;
    }
    while (taken[low] === 1) low++;
    taken[low] = 1;
    ranks[t] = low;
  }
}
