/** A square matrix, row by row. */
export type Matrix = readonly (readonly number[])[];

/** The lower triangle L with L times its transpose = m, or nothing when m is not positive definite. */
export function cholesky(m: Matrix): number[][] | undefined {
  const lower: number[][] = [];
  for (const [i, row] of m.entries()) {
    const out: number[] = [];
    for (let j = 0; j <= i; j++) {
      const above = lower[j] ?? out;
      let rest = row[j] ?? Number.NaN;
      for (let k = 0; k < j; k++) rest -= (out[k] ?? Number.NaN) * (above[k] ?? Number.NaN);
      if (i === j && !(rest > 1e-12)) return undefined;
      out.push(i === j ? Math.sqrt(rest) : rest / (above[j] ?? Number.NaN));
    }
    lower.push(out);
  }
  return lower;
}

/** Solves L x = b for a lower triangle L. */
export function solveLower(lower: Matrix, b: readonly number[]): number[] {
  const x: number[] = [];
  for (const [i, row] of lower.entries()) {
    let rest = b[i] ?? Number.NaN;
    for (let k = 0; k < i; k++) rest -= (row[k] ?? Number.NaN) * (x[k] ?? Number.NaN);
    x.push(rest / (row[i] ?? Number.NaN));
  }
  return x;
}
