import { valueAt } from '../base';
/** Mean and standard deviation of the finite values. */
export interface Moments {
  readonly count: number;
  readonly mean: number;
  readonly variance: number;
}

/** Mean and sample variance (divided by n - 1), by the two-pass rule with the first value as origin. */
export function momentsOf(values: Float64Array): Moments {
  let count = 0;
  let sum = 0;
  let origin = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const x = valueAt(values, i);
    if (!Number.isFinite(x)) continue;
    if (count === 0) origin = x;
    count++;
    sum += x - origin;
  }
  const shift = sum / count;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const off = valueAt(values, i) - origin - shift;
    if (Number.isFinite(off)) squares += off * off;
  }
  return { count, mean: origin + shift, variance: count > 1 ? squares / (count - 1) : 0 };
}
