import { at, BugError } from '../base';
import { allocate, fromCents } from '../money';

/** An amount of money in whole cents; negative is a credit. Plain, so that it crosses to a worker and back. */
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
  return divideRounded(BigInt(whole(amount)) * BigInt(Math.round(share * SHARE_SCALE)), BigInt(SHARE_SCALE));
}

/**
 * Splits a total over weights so that the parts add up to it to the cent, by largest remainder. Credits among
 * the weights take a negative part, rounded as one, and share it in the same way; a part never outgrows its
 * weight when the total does not outgrow their sum.
 * @throws BugError when there is something to split and the weights add up to nothing.
 */
export function allocateCents(total: Cents, weights: readonly number[]): Cents[] {
  const credits = weights.map(weight => Math.max(0, -weight));
  const credit = sumCents(credits);
  const sum = sumCents(weights);
  if (sum === 0 && total !== 0) throw new BugError(`nothing to split ${total} cents by`);
  if (sum === 0) return weights.map(() => NOTHING);
  if (weights.filter(weight => weight !== 0).length === 1)
    return weights.map(weight => (weight === 0 ? NOTHING : total));
  const taken = divideRounded(BigInt(total) * BigInt(credit), BigInt(sum));
  const charged = allocate(
    fromCents(total + taken),
    weights.map(weight => Math.max(0, weight)),
  );
  const credited = allocate(fromCents(taken), credits);
  return weights.map((_, part) => at(charged, part).cents - at(credited, part).cents);
}

/** An item with its part of a split total. */
export interface Part<Item> {
  readonly item: Item;
  readonly amount: Cents;
}

/** Splits a total over items by a weight of each, as {@link allocateCents}, and hands each item its part. */
export function allocateOver<Item>(
  total: Cents,
  items: readonly Item[],
  weightOf: (item: Item) => number,
): Part<Item>[] {
  const parts = allocateCents(total, items.map(weightOf));
  return items.map((item, index) => ({ item, amount: at(parts, index) }));
}

/** A quotient of whole numbers, rounded half away from zero. */
function divideRounded(numerator: bigint, denominator: bigint): number {
  const isNegative = numerator < 0n !== denominator < 0n;
  const [n, d] = [absolute(numerator), absolute(denominator)];
  const size = Number((n * 2n + d) / (d * 2n));
  return isNegative && size !== 0 ? -size : size;
}

function absolute(value: bigint): bigint {
  return value < 0n ? -value : value;
}

function whole(amount: number): number {
  if (!Number.isSafeInteger(amount)) throw new BugError(`not whole cents: ${amount}`);
  return amount;
}
