import { valueAt } from '../../base';

/**
 * Solves a small dense system in place, Gaussian elimination with partial pivoting.
 * @param matrix n rows of n, row after row; destroyed.
 * @param right the right side; holds the answer afterwards.
 */
export function linearSolve(matrix: Float64Array, right: Float64Array): void {
  const n = right.length;
  for (let k = 0; k < n; k++) {
    pivot(matrix, right, k);
    const head = valueAt(matrix, k * n + k);
    for (let i = k + 1; i < n; i++) {
      const entry = valueAt(matrix, i * n + k);
      if (entry === 0) continue;
      const factor = entry / head;
      for (let j = k; j < n; j++)
        matrix[i * n + j] = valueAt(matrix, i * n + j) - factor * valueAt(matrix, k * n + j);
      right[i] = valueAt(right, i) - factor * valueAt(right, k);
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = valueAt(right, i);
    for (let j = i + 1; j < n; j++) sum -= valueAt(matrix, i * n + j) * valueAt(right, j);
    right[i] = sum / valueAt(matrix, i * n + i);
  }
}

function pivot(matrix: Float64Array, right: Float64Array, k: number): void {
  const n = right.length;
  let best = k;
  for (let i = k + 1; i < n; i++)
    if (Math.abs(valueAt(matrix, i * n + k)) > Math.abs(valueAt(matrix, best * n + k))) best = i;
  if (best === k) return;
  for (let j = 0; j < n; j++) {
    const held = valueAt(matrix, k * n + j);
    matrix[k * n + j] = valueAt(matrix, best * n + j);
    matrix[best * n + j] = held;
  }
  const held = valueAt(right, k);
  right[k] = valueAt(right, best);
  right[best] = held;
}
