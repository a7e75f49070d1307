import Decimal from 'decimal.js';
import { BugError } from '../base';
import { Money } from './money';

/**
 * Splits an amount by cumulative rounding: each part is the rounded running share less the one before. The
 * parts add up to the amount, and a workbook can show the same split as one live formula a column. No part
 * is a full cent from its exact share.
 * @param shares decimal text or doubles that add up to 1 (to 10 decimals), none negative.
 * @throws BugError when they do not.
 * @example cumulativeShares(fromCents(100), ['0.25', '0.25', '0.5'])
 */
export function cumulativeShares(amount: Money, shares: readonly (string | number)[]): Money[] {
  let running = new Decimal(0);
  let given = 0;
  const parts = shares.map(share => {
    const exact = new Decimal(share);
    if (!exact.isFinite() || exact.isNegative()) throw new BugError('shares of an amount are zero or more');
    running = running.plus(exact);
    const upTo = running.toDecimalPlaces(10).times(amount.cents).toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
    const part = upTo.toNumber() - given;
    given = upTo.toNumber();
    return new Money(part);
  });
  if (shares.length > 0 && !running.toDecimalPlaces(10).eq(1))
    throw new BugError(`shares add up to ${running.toString()}, not to 1`);
  return parts;
}
