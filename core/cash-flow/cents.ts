import { BugError } from '../base';

/** An amount of money in whole cents; negative is a credit. */
export type Cents = number;

/** What a sum of no amounts is. */
const NOTHING: Cents = 0;

/** A share is settled to nine decimals before it is multiplied, so that 0.15 is 15 in 100 and not its neighbour. */
const SHARE_SCALE = 1_000_000_000;

/** The sum of amounts, in cents. @throws BugError when an amount is not whole cents. */
export function sumCents(amounts: readonly Cents[]): Cents {
  return amounts.reduce((sum, amount) => sum + whole(amount), NOTHING);
}

/**
 * A share of an amount, rounded once, half away from zero. The product is taken in whole numbers, so no cent
 * is lost to floating point.
 * @param amount cents. @param share such as 0.75; settled to nine decimals first.
 */
export function shareOf(amount: Cents, share: number): Cents {
  const product = BigInt(whole(amount)) * BigInt(Math.round(share * SHARE_SCALE));
  const scale = BigInt(SHARE_SCALE);
  const size = product < 0n ? -product : product;
  const rounded = (size * 2n + scale) / (scale * 2n);
  return Number(product < 0n ? -rounded : rounded);
}

/**
 * Splits a total over weights so that the parts add up to it to the cent: each part is first rounded down,
 * and the cents left over go to the largest remainders, the earlier part first on a tie (Hamilton's method).
 * @param total cents. @param weights whole numbers of any sign whose sum is not zero unless the total is.
 * @throws BugError when there is something to split and nothing to split it by.
 * @source M. Balinski, H. P. Young, Fair Representation (1982), method of largest remainders.
 */
export function allocateCents(total: Cents, weights: readonly number[]): Cents[] {
  const sum = weights.reduce((all, weight) => all + BigInt(whole(weight)), 0n);
  if (sum === 0n) {
    if (total !== 0) throw new BugError(`nothing to split ${total} cents by`);
    return weights.map(() => NOTHING);
  }
  const parts = weights.map(weight => floorDivide(BigInt(whole(total)) * BigInt(weight), sum));
  const floored = parts.reduce((all, part) => all + part.floor, 0n);
  const left = Number(BigInt(total) - floored);
  const order = parts.map((_, index) => index).sort((a, b) => compareRemainders(parts, a, b));
  const lifted = new Set(order.slice(0, left));
  return parts.map((part, index) => Number(part.floor) + (lifted.has(index) ? 1 : 0));
}

interface Quotient {
  readonly floor: bigint;
  readonly remainder: bigint;
}

function floorDivide(numerator: bigint, denominator: bigint): Quotient {
  const [n, d] = denominator < 0n ? [-numerator, -denominator] : [numerator, denominator];
  const remainder = ((n % d) + d) % d;
  return { floor: (n - remainder) / d, remainder };
}

function compareRemainders(parts: readonly Quotient[], a: number, b: number): number {
  const [left, right] = [parts[a]?.remainder ?? 0n, parts[b]?.remainder ?? 0n];
  if (left === right) return a - b;
  return left > right ? -1 : 1;
}

function whole(amount: number): number {
  if (!Number.isSafeInteger(amount)) throw new BugError(`not whole cents: ${amount}`);
  return amount;
}
