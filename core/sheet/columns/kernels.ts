/**
 * The loops of the column evaluator that few trials need: tiny top-level functions, one operation each, over
 * the first n trials. They stay apart because the engine compiles each for itself; one loop with a switch
 * runs many times slower.
 * Reading past an array's end gives NaN, which is how the column evaluator writes absent.
 */
import { roundOne } from './rounding';

type Trials = Float64Array;

export function roundUp(out: Trials, a: Trials, factor: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = Math.ceil(roundOne(a[i] ?? NaN, factor)) + 0;
}

export function minus(out: Trials, a: Trials, b: Trials, n: number): void {
  for (let i = 0; i < n; i++) out[i] = (a[i] ?? NaN) - (b[i] ?? NaN);
}

export function over(out: Trials, a: Trials, b: Trials, n: number): void {
  for (let i = 0; i < n; i++) {
    const by = b[i] ?? NaN;
    out[i] = by === 0 ? NaN : (a[i] ?? NaN) / by;
  }
}

/** Bases between these, to powers up to the limit, are raised by logarithm: faster, and the same to 10^-14. */
const LEAST_BASE = 1 / 16;
const GREATEST_BASE = 16;
const GREATEST_POWER = 4;

export function power(out: Trials, a: Trials, b: Trials, n: number): void {
  for (let i = 0; i < n; i++) out[i] = raised(a[i] ?? NaN, b[i] ?? NaN);
}

/** One power; NaN where it is not finite, and of an absent base to whatever power: the engine makes 1 of it to the power 0. */
export function raised(base: number, exponent: number): number {
  const part = (base - 1) / (base + 1);
  const near = exponent * 2 * part * atanhOver(part * part);
  if (part < NEAR_ONE && part > -NEAR_ONE && near < NEAR_NOTHING && near > -NEAR_NOTHING)
    return expNearNothing(near);
  const isPlain = base > LEAST_BASE && base < GREATEST_BASE && Math.abs(exponent) < GREATEST_POWER;
  const y = isPlain ? Math.exp(exponent * Math.log(base)) : Math.pow(base, exponent);
  return Number.isFinite(y) && !Number.isNaN(base) ? y : NaN;
}

/** Yearly changes of prices: (base - 1) / (base + 1) up to this, and logarithms of the power up to the other. */
const NEAR_ONE = 0.1;
const NEAR_NOTHING = 0.7;

/** artanh(s) / s by its series in s squared, to 10^-16 for s up to a tenth; the logarithm is 2 artanh((b-1)/(b+1)). */
function atanhOver(q: number): number {
  return 1 + q * (1 / 3 + q * (1 / 5 + q * (1 / 7 + q * (1 / 9 + q * (1 / 11 + q * (1 / 13 + q / 15))))));
}

/** The exponential by its series at a quarter of x, then squared twice: within 4 · 10^-14 of itself for x up to 0.7. */
function expNearNothing(x: number): number {
  const y = x / 4;
  const z = y * y;
  const even = 1 + z * (1 / 2 + z * (1 / 24 + z * (1 / 720 + z / 40320)));
  const odd = y * (1 + z * (1 / 6 + z * (1 / 120 + z * (1 / 5040 + z / 362880))));
  const root = even + odd;
  return root * root * (root * root);
}

/** 1 where a is at least b, both settled; 0 where not; NaN where either is absent. */
export function reaches(out: Trials, a: Trials, b: Trials, factor: number, n: number): void {
  for (let i = 0; i < n; i++) {
    const gap = roundOne(a[i] ?? NaN, factor) - roundOne(b[i] ?? NaN, factor);
    out[i] = gap >= 0 ? 1 : gap < 0 ? 0 : NaN;
  }
}

export function choose(out: Trials, condition: Trials, a: Trials, b: Trials, n: number): void {
  for (let i = 0; i < n; i++) {
    const c = condition[i] ?? NaN;
    out[i] = Number.isNaN(c) ? NaN : c === 1 ? (a[i] ?? NaN) : (b[i] ?? NaN);
  }
}

export function firstPresent(out: Trials, a: Trials, b: Trials, n: number): void {
  for (let i = 0; i < n; i++) {
    const first = a[i] ?? NaN;
    out[i] = Number.isNaN(first) ? (b[i] ?? NaN) : first;
  }
}

export function addPresent(out: Trials, a: Trials, n: number): void {
  for (let i = 0; i < n; i++) {
    const x = a[i] ?? NaN;
    if (!Number.isNaN(x)) out[i] = (out[i] ?? NaN) + x;
  }
}

export function countPresent(out: Trials, a: Trials, n: number): void {
  for (let i = 0; i < n; i++) if (!Number.isNaN(a[i] ?? NaN)) out[i] = (out[i] ?? NaN) + 1;
}

/** Adds a where the key equals the wanted key. */
export function addWhere(out: Trials, a: Trials, key: Trials, wanted: Trials, n: number): void {
  for (let i = 0; i < n; i++) {
    const k = key[i] ?? NaN;
    const w = wanted[i] ?? NaN;
    if (k === w) out[i] = (out[i] ?? NaN) + (a[i] ?? NaN);
    else if (Number.isNaN(k) || Number.isNaN(w)) out[i] = NaN;
  }
}

/** The part of an amount of money between two running shares, each rounded to the cent. */
export function between(out: Trials, a: Trials, from: Trials, to: Trials, factor: number, n: number): void {
  for (let i = 0; i < n; i++) {
    const whole = a[i] ?? NaN;
    const upTo = roundOne(whole * roundOne(to[i] ?? NaN, factor), 100);
    out[i] = roundOne(upTo - roundOne(whole * roundOne(from[i] ?? NaN, factor), 100), 100);
  }
}

export function grossUp(out: Trials, a: Trials, share: Trials, factor: number, n: number): void {
  for (let i = 0; i < n; i++) {
    const rest = 1 - (share[i] ?? NaN);
    out[i] = rest > 0 ? roundOne((a[i] ?? NaN) / rest, factor) : NaN;
  }
}

/** Values of consecutive whole keys from `first` on, by settled key; beyond the end NaN or the last. */
export function lookUpByIndex(
  out: Trials,
  key: Trials,
  settle: number,
  table: IndexedValues,
  n: number,
): void {
  const { values, first, hold } = table;
  const last = values.length - 1;
  for (let i = 0; i < n; i++) {
    const at = roundOne(key[i] ?? NaN, settle) - first;
    out[i] = (hold && at > last ? values[last] : values[at]) ?? NaN;
  }
}

export interface IndexedValues {
  readonly values: Float64Array;
  readonly first: number;
  readonly hold: boolean;
}

/** The number of the last key not above the wanted one, or -1. Keys ascend. */
export function stepOf(keys: Float64Array, wanted: number): number {
  let low = 0;
  let high = keys.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((keys[middle] ?? NaN) <= wanted) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
