import Decimal from 'decimal.js';

/** The decimal arithmetic of the sheet: 34 digits, half away from zero, printed without exponents. */
export const Exact = Decimal.clone({
  precision: 34,
  rounding: Decimal.ROUND_HALF_UP,
  toExpNeg: -60,
  toExpPos: 60,
});
export type Exact = Decimal;

/** A value of the exact evaluator: a number, or absent. */
export type Value = Exact | undefined;

export const ZERO: Exact = new Exact(0);
export const ONE: Exact = new Exact(1);

/** Digits that a chain of divisions leaves trustworthy out of 34; more are dust of the divisions. */
const TRUSTED_DIGITS = 28;

/** Words of seven digits that 28 digits fill at most. */
const TRUSTED_WORDS = TRUSTED_DIGITS / 7;

/**
 * Settles a value to stated decimals, half away from zero. The dust that divisions leave behind the 28th
 * digit goes first, so that a tie reached by a detour is a tie here as it is in a workbook.
 */
export function settle(value: Exact, digits: number): Exact {
  const isShort = value.d.length < TRUSTED_WORDS || value.precision() <= TRUSTED_DIGITS;
  const clean = isShort ? value : value.toSignificantDigits(TRUSTED_DIGITS);
  return clean.decimalPlaces() <= digits ? clean : clean.toDecimalPlaces(digits);
}

/** The sum; nothing added changes nothing and costs nothing. */
export function plus(a: Exact, b: Exact): Exact {
  if (b.isZero()) return a;
  return a.isZero() ? b : a.plus(b);
}

/** The product; a factor of one changes nothing and costs nothing. */
export function times(a: Exact, b: Exact): Exact {
  if (isOne(b)) return a;
  if (isOne(a)) return b;
  return a.isZero() || b.isZero() ? ZERO : a.times(b);
}

function isOne(x: Exact): boolean {
  return x.e === 0 && x.d.length === 1 && x.d[0] === 1 && x.s === 1;
}

/** Numbers already read, by their text: the same givens are read again and again, and decimals never change. */
const READ = new Map<string, Exact>();
const MOST_READ = 20_000;

/** A number from plain decimal text. */
export function exactOfText(text: string): Exact {
  const known = READ.get(text);
  if (known !== undefined) return known;
  const value = new Exact(text);
  if (READ.size < MOST_READ) READ.set(text, value);
  return value;
}
