import { leastSquares } from './least-squares';
import { momentsOf } from './moments';

/** One uncertainty in the trials: whether it acts, and how large it is in standard deviations. */
export interface TrialSizes {
  readonly acts: Uint8Array;
  readonly size: Float64Array;
}

/**
 * By what share the variance of a result falls when an uncertainty is held at its mode and all else is drawn as
 * before. Part of the trials is run again; what the uncertainty adds is regressed on its own size there, taken
 * off in all trials, and what the regression misses is put right from the part run again.
 * With all trials run again the answer is exactly 1 - (variance held) / (variance as it is).
 * @param result all trials as they are; @param sizes the uncertainty in them.
 * @param again numbers of the trials run again; @param held their results with the uncertainty held.
 * @source Control variates: P. Glasserman, Monte Carlo Methods in Financial Engineering, 2004, section 4.1.
 */
export function contribution(
  result: Float64Array,
  sizes: TrialSizes,
  again: Uint32Array,
  held: Float64Array,
): number {
  const whole = momentsOf(result);
  if (!(whole.variance > 0)) return 0;
  const all = Uint32Array.from(result.keys());
  const termsOf = (trials: Uint32Array) =>
    terms(result, sizes, trials, whole.mean, Math.sqrt(whole.variance));
  const asItIs = pick(result, again);
  const isUsable = (i: number) => Number.isFinite(asItIs[i]) && Number.isFinite(held[i]);
  const usable = again.filter((_, i) => isUsable(i));
  const heldUsable = held.filter((_, i) => isUsable(i));
  const added = pick(result, usable).map((x, i) => x - (heldUsable[i] ?? Number.NaN));
  const weights = leastSquares(termsOf(usable), added);
  const rest = without(result, all, termsOf(all), weights);
  const missed =
    momentsOf(heldUsable).variance - momentsOf(without(result, usable, termsOf(usable), weights)).variance;
  return 1 - (momentsOf(rest).variance + missed) / whole.variance;
}

function pick(values: Float64Array, trials: Uint32Array): Float64Array {
  return Float64Array.from(trials, t => values[t] ?? Number.NaN);
}

/** Terms of what the uncertainty adds: constants, size to the third power, and size times the level of the result. */
function terms(
  result: Float64Array,
  sizes: TrialSizes,
  trials: Uint32Array,
  mean: number,
  deviation: number,
) {
  const column = (whenActing: 1 | 0, term: (size: number, level: number) => number) =>
    Float64Array.from(trials, t => {
      const level = ((result[t] ?? Number.NaN) - mean) / deviation;
      return sizes.acts[t] === whenActing && Number.isFinite(level) ? term(sizes.size[t] ?? 0, level) : 0;
    });
  return [
    column(0, () => 1),
    column(1, () => 1),
    column(1, size => size),
    column(1, size => size ** 2),
    column(1, size => size ** 3),
    column(1, (_, level) => level),
    column(1, (size, level) => size * level),
  ];
}

function without(
  result: Float64Array,
  trials: Uint32Array,
  columns: readonly Float64Array[],
  weights: readonly number[],
) {
  return Float64Array.from(trials, (t, i) => {
    const added = columns.reduce((sum, column, k) => sum + (column[i] ?? 0) * (weights[k] ?? 0), 0);
    return (result[t] ?? Number.NaN) - added;
  });
}
