/** Mean and standard deviation of the finite values. */
export interface Moments {
  readonly count: number;
  readonly mean: number;
  readonly variance: number;
}

/** Mean and sample variance (divided by n - 1), by the two-pass rule with the first value as origin. */
export function momentsOf(values: Float64Array): Moments {
  const finite = values.filter(Number.isFinite);
  const count = finite.length;
  const origin = finite[0] ?? Number.NaN;
  let sum = 0;
  for (const x of finite) sum += x - origin;
  const shift = sum / count;
  let squares = 0;
  for (const x of finite) squares += (x - origin - shift) ** 2;
  return { count, mean: origin + shift, variance: count > 1 ? squares / (count - 1) : 0 };
}
