import Decimal from 'decimal.js';
import { BugError, type Finding } from '../base';
import { isDecimalText } from '../units';

/**
 * An amount of US dollars in whole cents; credits are negative. It cannot be added or compared by accident
 * (`valueOf` throws). Exact to 90 trillion dollars.
 * @throws BugError when the cents are not a safe whole number.
 */
export class Money {
  readonly cents: number;

  constructor(cents: number) {
    if (!Number.isSafeInteger(cents)) throw new BugError(`${cents} is not a whole number of cents`);
    this.cents = cents === 0 ? 0 : cents;
  }

  /** @throws BugError always: use plus, minus, sumMoney, compareMoney. */
  valueOf(): never {
    throw new BugError('money is not a number: use plus, minus, sumMoney or compareMoney');
  }

  /** Decimal text with two decimals: `-1250.50`. */
  toString(): string {
    return moneyText(this);
  }

  toJSON(): { value: string; unit: 'USD' } {
    return { value: moneyText(this), unit: 'USD' };
  }
}

/** Money of whole cents. @throws BugError when the cents are not a whole number. */
export function fromCents(cents: number): Money {
  return new Money(cents);
}

/**
 * Rounds an amount of dollars to the cent, half away from zero, credits too.
 * @param dollars decimal text, or a double (taken at its shortest printed form).
 * @throws BugError when it is not a finite number.
 * @example roundToCents('-2.345').cents // -235
 */
export function roundToCents(dollars: string | number): Money {
  const exact = new Decimal(dollars);
  if (!exact.isFinite()) throw new BugError(`${dollars} is not an amount of money`);
  return new Money(exact.times(100).toDecimalPlaces(0, Decimal.ROUND_HALF_UP).toNumber());
}

/**
 * Reads an amount as the document keeps it: decimal text of at most two decimals.
 * @returns the money, or the finding.
 */
export function parseMoney(text: string, place: string): Money | Finding {
  const plain = text.trim().replace(/^\$\s*/, '');
  const digits = /^-?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(plain) ? plain.replaceAll(',', '') : plain;
  const cents = isDecimalText(digits) ? new Decimal(digits).times(100) : undefined;
  if (cents?.isInteger() === true && cents.abs().lte(Number.MAX_SAFE_INTEGER))
    return new Money(cents.toNumber());
  return {
    code: 'money/not-an-amount',
    weight: 'blocks',
    place,
    message: `"${text.slice(0, 40)}" is not an amount of dollars and cents.`,
    meaning: 'The amount is not taken.',
    remedy: 'Write dollars with at most two decimals, such as 1250.50.',
  };
}

/** Decimal text with two decimals, no separators: `1250.50`. */
export function moneyText(money: Money): string {
  return new Decimal(money.cents).div(100).toFixed(2);
}

/** A number of dollars with at most two decimals, as JSON prints it. */
export function dollarsOf(money: Money): number {
  return Number(moneyText(money));
}
