/**
 * Solves a small dense system in place, Gaussian elimination with partial pivoting.
 * @param matrix n rows of n, row after row; destroyed.
 * @param right the right side; holds the answer afterwards.
 */
export function linearSolve(matrix: Float64Array, right: Float64Array): void {
  const n = right.length;
  for (let k = 0; k < n; k++) {
    pivot(matrix, right, k);
    const head = matrix[k * n + k] ?? 1;
    for (let i = k + 1; i < n; i++) {
      const entry = matrix[i * n + k] ?? 0;
      if (entry === 0) continue;
      const factor = entry / head;
      for (let j = k; j < n; j++)
        matrix[i * n + j] = (matrix[i * n + j] ?? 0) - factor * (matrix[k * n + j] ?? 0);
      right[i] = (right[i] ?? 0) - factor * (right[k] ?? 0);
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i] ?? 0;
    for (let j = i + 1; j < n; j++) sum -= (matrix[i * n + j] ?? 0) * (right[j] ?? 0);
    right[i] = sum / (matrix[i * n + i] ?? 1);
  }
}

function pivot(matrix: Float64Array, right: Float64Array, k: number): void {
  const n = right.length;
  let best = k;
  for (let i = k + 1; i < n; i++)
    if (Math.abs(matrix[i * n + k] ?? 0) > Math.abs(matrix[best * n + k] ?? 0)) best = i;
  if (best === k) return;
  for (let j = 0; j < n; j++) {
    const held = matrix[k * n + j] ?? 0;
    matrix[k * n + j] = matrix[best * n + j] ?? 0;
    matrix[best * n + j] = held;
  }
  const held = right[k] ?? 0;
  right[k] = right[best] ?? 0;
  right[best] = held;
}
