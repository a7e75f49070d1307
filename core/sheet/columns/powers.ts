import { raised } from './kernels';

/**
 * Powers of one base, kept by trial: the rows of a table raise the same yearly change to the few numbers of months
 * that the schedule gives them, and a power costs as much as twenty other steps.
 */
class KeptPowers {
  readonly #base: Float64Array;
  /** The base as it was when the powers were worked out. */
  readonly #raised: Float64Array;
  /** By slot and then by trial: the exponent, and the power; no number where there is none yet. */
  readonly #exponents: Float64Array;
  readonly #powers: Float64Array;

  constructor(base: Float64Array) {
    this.#base = base;
    this.#raised = new Float64Array(base.length).fill(Number.NaN);
    this.#exponents = new Float64Array(SLOTS * base.length).fill(Number.NaN);
    this.#powers = new Float64Array(SLOTS * base.length);
  }

  fill(out: Float64Array, exponent: Float64Array, n: number): void {
    this.#forgetOthers(n);
    const [base, exponents, powers, trials] = [
      this.#base,
      this.#exponents,
      this.#powers,
      this.#base.length,
    ] as const;
    for (let t = 0; t < n; t++) {
      const asked = exponent[t] ?? NaN;
      const at = ((asked * STEPS_OF_ONE + 0.5) & (SLOTS - 1)) * trials + t;
      if (exponents[at] !== asked) {
        exponents[at] = asked;
        powers[at] = raised(base[t] ?? NaN, asked);
      }
      out[t] = powers[at] ?? NaN;
    }
  }

  /** The array of a base is filled anew for every batch, and may be lent to another step in between. */
  #forgetOthers(n: number): void {
    for (let t = 0; t < n; t++) {
      if (this.#base[t] === this.#raised[t]) continue;
      this.#raised.set(this.#base);
      this.#exponents.fill(Number.NaN);
      return;
    }
  }
}

/** Slots a trial, a power of two, and how finely exponents are told apart: by months of a year for five years. */
const SLOTS = 64;
const STEPS_OF_ONE = 12;

const KEPT = new WeakMap<Float64Array, KeptPowers>();

/** Raises the base to the exponent, trial by trial; steps with the same base share what they worked out. */
export function sharedPowers(
  out: Float64Array,
  base: Float64Array,
  exponent: Float64Array,
): (n: number) => void {
  const kept = KEPT.get(base) ?? new KeptPowers(base);
  KEPT.set(base, kept);
  return n => {
    kept.fill(out, exponent, n);
  };
}
