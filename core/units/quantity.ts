import Decimal from 'decimal.js';
import { BugError } from '../base';
import type { Unit } from './unit';

/** Plain decimal text: no exponent, no thousands separators, at most 30 digits. */
const DECIMAL_TEXT = /^-?(?:\d{1,30}|\d{0,29}\.\d{1,29})$/;

/** Whether a text is a plain decimal number of at most 30 digits (so `1e999` and `Infinity` are not). */
export function isDecimalText(text: string): boolean {
  return text.length <= 32 && DECIMAL_TEXT.test(text);
}

/**
 * A quantity: decimal text with its unit. It cannot be compared or added by accident (`valueOf` throws),
 * and travels between processes as plain JSON.
 * @example quantity('9950', 'long-ton')
 */
export class Quantity<U extends Unit = Unit> {
  readonly value: string;
  readonly unit: U;

  constructor(value: string, unit: U) {
    if (!isDecimalText(value)) throw new BugError(`a quantity needs plain decimal text, not "${value}"`);
    const exact = new Decimal(value);
    this.value = exact.isZero() ? '0' : exact.toFixed();
    this.unit = unit;
  }

  /** @throws BugError always: quantities are converted and compared by functions that know their units. */
  valueOf(): never {
    throw new BugError('a quantity is not a number: use convert, compareQuantities or amountIn');
  }

  toString(): string {
    return this.unit === '1' ? this.value : `${this.value} ${this.unit}`;
  }

  toJSON(): { value: string; unit: U } {
    return { value: this.value, unit: this.unit };
  }
}

/** A quantity of decimal text (or an integer) and a unit. @throws BugError when the text is not a plain decimal. */
export function quantity<U extends Unit>(value: string | number, unit: U): Quantity<U> {
  return new Quantity(typeof value === 'number' ? new Decimal(value).toFixed() : value, unit);
}
