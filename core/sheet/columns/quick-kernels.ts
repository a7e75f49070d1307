/**
 * The loops that most trials spend their time in, written out four trials a turn: the engine then checks its
 * arrays once for four, which halves the time. One operation each; `NaN` past an array's end is absent.
 */
import { LIFT, nearestWhole as whole } from './rounding';

type Trials = Float64Array;

/** Half away from zero, credits too, to the decimals of the factor (100 for cents). */
export function roundTo(out: Trials, a: Trials, factor: number, n: number): void {
  const lifted = factor * LIFT;
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = whole((a[i] ?? NaN) * lifted) / factor;
    out[i + 1] = whole((a[i + 1] ?? NaN) * lifted) / factor;
    out[i + 2] = whole((a[i + 2] ?? NaN) * lifted) / factor;
    out[i + 3] = whole((a[i + 3] ?? NaN) * lifted) / factor;
  }
  for (; i < n; i++) out[i] = whole((a[i] ?? NaN) * lifted) / factor;
}

/** A product of one array and a constant, rounded in the same pass. */
export function roundTimes1(out: Trials, a: Trials, by: number, factor: number, n: number): void {
  const lifted = by * factor * LIFT;
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = whole((a[i] ?? NaN) * lifted) / factor;
    out[i + 1] = whole((a[i + 1] ?? NaN) * lifted) / factor;
    out[i + 2] = whole((a[i + 2] ?? NaN) * lifted) / factor;
    out[i + 3] = whole((a[i + 3] ?? NaN) * lifted) / factor;
  }
  for (; i < n; i++) out[i] = whole((a[i] ?? NaN) * lifted) / factor;
}

/** A product of two arrays and a constant, rounded in the same pass. */
export function roundTimes2(out: Trials, a: Trials, b: Trials, by: number, factor: number, n: number): void {
  const lifted = by * factor * LIFT;
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = whole((a[i] ?? NaN) * (b[i] ?? NaN) * lifted) / factor;
    out[i + 1] = whole((a[i + 1] ?? NaN) * (b[i + 1] ?? NaN) * lifted) / factor;
    out[i + 2] = whole((a[i + 2] ?? NaN) * (b[i + 2] ?? NaN) * lifted) / factor;
    out[i + 3] = whole((a[i + 3] ?? NaN) * (b[i + 3] ?? NaN) * lifted) / factor;
  }
  for (; i < n; i++) out[i] = whole((a[i] ?? NaN) * (b[i] ?? NaN) * lifted) / factor;
}

/** One array and a constant. */
export function add1(out: Trials, a: Trials, plus: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) + plus;
    out[i + 1] = (a[i + 1] ?? NaN) + plus;
    out[i + 2] = (a[i + 2] ?? NaN) + plus;
    out[i + 3] = (a[i + 3] ?? NaN) + plus;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) + plus;
}

/** Two arrays and a constant. */
export function add2(out: Trials, a: Trials, b: Trials, plus: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) + (b[i] ?? NaN) + plus;
    out[i + 1] = (a[i + 1] ?? NaN) + (b[i + 1] ?? NaN) + plus;
    out[i + 2] = (a[i + 2] ?? NaN) + (b[i + 2] ?? NaN) + plus;
    out[i + 3] = (a[i + 3] ?? NaN) + (b[i + 3] ?? NaN) + plus;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) + (b[i] ?? NaN) + plus;
}

/** Three arrays and a constant. */
export function add3(out: Trials, a: Trials, b: Trials, c: Trials, plus: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) + (b[i] ?? NaN) + (c[i] ?? NaN) + plus;
    out[i + 1] = (a[i + 1] ?? NaN) + (b[i + 1] ?? NaN) + (c[i + 1] ?? NaN) + plus;
    out[i + 2] = (a[i + 2] ?? NaN) + (b[i + 2] ?? NaN) + (c[i + 2] ?? NaN) + plus;
    out[i + 3] = (a[i + 3] ?? NaN) + (b[i + 3] ?? NaN) + (c[i + 3] ?? NaN) + plus;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) + (b[i] ?? NaN) + (c[i] ?? NaN) + plus;
}

/** Four arrays and a constant. */
export function add4(out: Trials, a: Trials, b: Trials, c: Trials, d: Trials, plus: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) + (b[i] ?? NaN) + ((c[i] ?? NaN) + (d[i] ?? NaN)) + plus;
    out[i + 1] = (a[i + 1] ?? NaN) + (b[i + 1] ?? NaN) + ((c[i + 1] ?? NaN) + (d[i + 1] ?? NaN)) + plus;
    out[i + 2] = (a[i + 2] ?? NaN) + (b[i + 2] ?? NaN) + ((c[i + 2] ?? NaN) + (d[i + 2] ?? NaN)) + plus;
    out[i + 3] = (a[i + 3] ?? NaN) + (b[i + 3] ?? NaN) + ((c[i + 3] ?? NaN) + (d[i + 3] ?? NaN)) + plus;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) + (b[i] ?? NaN) + ((c[i] ?? NaN) + (d[i] ?? NaN)) + plus;
}

/** One array times a constant. */
export function times1(out: Trials, a: Trials, factor: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) * factor;
    out[i + 1] = (a[i + 1] ?? NaN) * factor;
    out[i + 2] = (a[i + 2] ?? NaN) * factor;
    out[i + 3] = (a[i + 3] ?? NaN) * factor;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) * factor;
}

/** Two arrays times a constant. */
export function times2(out: Trials, a: Trials, b: Trials, factor: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) * (b[i] ?? NaN) * factor;
    out[i + 1] = (a[i + 1] ?? NaN) * (b[i + 1] ?? NaN) * factor;
    out[i + 2] = (a[i + 2] ?? NaN) * (b[i + 2] ?? NaN) * factor;
    out[i + 3] = (a[i + 3] ?? NaN) * (b[i + 3] ?? NaN) * factor;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) * (b[i] ?? NaN) * factor;
}

/** One array over a constant. */
export function overConstant(out: Trials, a: Trials, by: number, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = (a[i] ?? NaN) / by;
    out[i + 1] = (a[i + 1] ?? NaN) / by;
    out[i + 2] = (a[i + 2] ?? NaN) / by;
    out[i + 3] = (a[i + 3] ?? NaN) / by;
  }
  for (; i < n; i++) out[i] = (a[i] ?? NaN) / by;
}

/** The lesser of two; absent where either is. Comparing is faster than Math.min, which looks for signs of zero. */
export function least(out: Trials, a: Trials, b: Trials, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = lesser(a[i] ?? NaN, b[i] ?? NaN);
    out[i + 1] = lesser(a[i + 1] ?? NaN, b[i + 1] ?? NaN);
    out[i + 2] = lesser(a[i + 2] ?? NaN, b[i + 2] ?? NaN);
    out[i + 3] = lesser(a[i + 3] ?? NaN, b[i + 3] ?? NaN);
  }
  for (; i < n; i++) out[i] = lesser(a[i] ?? NaN, b[i] ?? NaN);
}

/** The greater of two; absent where either is. */
export function greatest(out: Trials, a: Trials, b: Trials, n: number): void {
  let i = 0;
  for (; i + 3 < n; i += 4) {
    out[i] = greater(a[i] ?? NaN, b[i] ?? NaN);
    out[i + 1] = greater(a[i + 1] ?? NaN, b[i + 1] ?? NaN);
    out[i + 2] = greater(a[i + 2] ?? NaN, b[i + 2] ?? NaN);
    out[i + 3] = greater(a[i + 3] ?? NaN, b[i + 3] ?? NaN);
  }
  for (; i < n; i++) out[i] = greater(a[i] ?? NaN, b[i] ?? NaN);
}

const lesser = (a: number, b: number): number => (a < b ? a : b <= a ? b : NaN);
const greater = (a: number, b: number): number => (a > b ? a : b >= a ? b : NaN);
