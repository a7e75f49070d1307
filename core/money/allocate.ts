import Decimal from 'decimal.js';
import { BugError } from '../base';
import { Money } from './money';

/**
 * Splits an amount in proportion to the ratios, to the cent, by largest remainder: each part is at most one
 * cent from its exact share, the parts add up to the amount, ties go to the earlier part, and a credit is
 * split like the same charge with the sign turned.
 * @param ratios decimal text or doubles, none negative.
 * @throws BugError when a ratio is negative or all are zero while the amount is not.
 * @source Method of largest remainder (Hamilton), Balinski and Young, Fair Representation, 1982.
 * @example allocate(fromCents(100), [1, 1, 1]) // 34, 33, 33 cents
 */
export function allocate(amount: Money, ratios: readonly (string | number)[]): Money[] {
  const weights = wholeWeights(ratios);
  const sum = weights.reduce((a, b) => a + b, 0n);
  if (sum === 0n) {
    if (amount.cents !== 0) throw new BugError('an amount cannot be allotted to ratios that are all zero');
    return weights.map(() => new Money(0));
  }
  const sign = amount.cents < 0 ? -1 : 1;
  const cents = BigInt(Math.abs(amount.cents));
  const floors = weights.map(weight => (cents * weight) / sum);
  const missing = Number(cents - floors.reduce((a, b) => a + b, 0n));
  const byRemainder = weights
    .map((weight, part) => ({ part, remainder: (cents * weight) % sum }))
    .sort((a, b) => (a.remainder === b.remainder ? a.part - b.part : a.remainder > b.remainder ? -1 : 1));
  const raised = new Set(byRemainder.slice(0, missing).map(entry => entry.part));
  return floors.map((floor, part) => new Money(sign * (Number(floor) + (raised.has(part) ? 1 : 0))));
}

/** The ratios as whole numbers in the same proportion, exactly. */
function wholeWeights(ratios: readonly (string | number)[]): bigint[] {
  const exact = ratios.map(ratio => new Decimal(ratio));
  if (exact.some(ratio => !ratio.isFinite() || ratio.isNegative()))
    throw new BugError('ratios of an allocation are zero or more');
  const decimals = Math.max(0, ...exact.map(ratio => ratio.decimalPlaces()));
  return exact.map(ratio => BigInt(ratio.toFixed(decimals).replace('.', '')));
}
