import { valueAt, wholeAt } from '../base';
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
  const deviation = Math.sqrt(whole.variance);
  const termsAt = (t: number, out: Float64Array) =>
    fillTerms(sizes, t, (valueAt(result, t) - whole.mean) / deviation, out);
  const both = [...again.keys()].filter(
    i => Number.isFinite(result[wholeAt(again, i)]) && Number.isFinite(held[i]),
  );
  const trials = Uint32Array.from(both, i => wholeAt(again, i));
  const without = Float64Array.from(both, i => valueAt(held, i));
  const weights = leastSquares(TERMS, trials.length, (i, out) => {
    termsAt(wholeAt(trials, i), out);
    return valueAt(result, wholeAt(trials, i)) - valueAt(without, i);
  });
  const rest = new Float64Array(result.length);
  for (let t = 0; t < rest.length; t++) {
    const value = valueAt(result, t);
    rest[t] = value - addedBy(sizes, t, (value - whole.mean) / deviation, weights);
  }
  const restAgain = trials.length === result.length ? rest : Float64Array.from(trials, t => valueAt(rest, t));
  const missed = momentsOf(without).variance - momentsOf(restAgain).variance;
  return 1 - (momentsOf(rest).variance + missed) / whole.variance;
}

/**
 * By what share the variance of a result falls when an uncertainty never acts, read off the trials in which it does not.
 * @param acts by trial 1 where it acts.
 */
export function contributionWhenAbsent(result: Float64Array, acts: Uint8Array): number {
  const { variance } = momentsOf(result);
  if (!(variance > 0)) return 0;
  return 1 - momentsOf(result.filter((_, t) => acts[t] !== 1)).variance / variance;
}

const TERMS = 7;

/** What the uncertainty adds to a trial by the weights of its terms; nothing in a trial without an answer. */
function addedBy(sizes: TrialSizes, t: number, level: number, weights: readonly number[]): number {
  const [absent = 0, acts = 0, line = 0, square = 0, cube = 0, byLevel = 0, byBoth = 0] = weights;
  if (!Number.isFinite(level)) return 0;
  if (sizes.acts[t] !== 1) return absent;
  const size = valueAt(sizes.size, t);
  return acts + size * (line + size * (square + size * cube)) + level * (byLevel + byBoth * size);
}

/** Terms of what the uncertainty adds: constants, size to the third power, and size times the level of the result. */
function fillTerms(sizes: TrialSizes, t: number, level: number, out: Float64Array): void {
  out.fill(0);
  if (!Number.isFinite(level)) return;
  if (sizes.acts[t] !== 1) {
    out[0] = 1;
    return;
  }
  const size = valueAt(sizes.size, t);
  out[1] = 1;
  out[2] = size;
  out[3] = size * size;
  out[4] = size * size * size;
  out[5] = level;
  out[6] = size * level;
}
