import { at } from '../../base';
/** A square matrix, row by row. */
export type Matrix = readonly (readonly number[])[];

/** The lower triangle L with L times its transpose = m, or nothing when m is not positive definite. */
export function cholesky(m: Matrix): number[][] | undefined {
  const lower: number[][] = [];
  for (const [i, row] of m.entries()) {
    const out: number[] = [];
    for (let j = 0; j <= i; j++) {
      const above = i === j ? out : at(lower, j);
      let rest = at(row, j);
      for (let k = 0; k < j; k++) rest -= at(out, k) * at(above, k);
      if (i === j && !(rest > 1e-12)) return undefined;
      out.push(i === j ? Math.sqrt(rest) : rest / at(above, j));
    }
    lower.push(out);
  }
  return lower;
}

/** Solves L x = b for a lower triangle L. */
export function solveLower(lower: Matrix, b: readonly number[]): number[] {
  const x: number[] = [];
  for (const [i, row] of lower.entries()) {
    let rest = at(b, i);
    for (let k = 0; k < i; k++) rest -= at(row, k) * at(x, k);
    x.push(rest / at(row, i));
  }
  return x;
}
