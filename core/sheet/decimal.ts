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

/**
 * Settles a value to stated decimals, half away from zero. The dust that divisions leave behind the 28th
 * digit goes first, so that a tie reached by a detour is a tie here as it is in a workbook.
 */
export function settle(value: Exact, digits: number): Exact {
  const clean = value.precision() > TRUSTED_DIGITS ? value.toSignificantDigits(TRUSTED_DIGITS) : value;
  return clean.toDecimalPlaces(digits);
}
