import Decimal from 'decimal.js';

const Exact = Decimal.clone({ precision: 34, rounding: Decimal.ROUND_HALF_UP, toExpNeg: -40, toExpPos: 40 });

/** The product of two plain decimal texts, exact. */
export function decimalProduct(a: string, b: string): string {
  return new Exact(a).times(b).toFixed();
}

/** The first plain decimal text less the second, exact. */
export function decimalDifference(a: string, b: string): string {
  return new Exact(a).minus(b).toFixed();
}

/** The quotient of two plain decimal texts to 28 digits; none when the second is zero. */
export function decimalQuotient(a: string, b: string): string | undefined {
  const divisor = new Exact(b);
  return divisor.isZero() ? undefined : new Exact(a).div(divisor).toSignificantDigits(28).toFixed();
}

/** Negative, zero or positive as the first is less than, equal to or greater than the second. */
export function compareDecimals(a: string, b: string): number {
  return new Exact(a).cmp(b);
}
