import Decimal from 'decimal.js';
import { BugError } from '../base';
import { UNIT_FACTORS } from './factors';
import { Quantity } from './quantity';
import { unitParts, type Unit } from './unit';

const Exact = Decimal.clone({ precision: 34, rounding: Decimal.ROUND_HALF_UP, toExpNeg: -40, toExpPos: 40 });

/** What a unit measures: `length`, `mass`, or `money/time` for a rate. A knot is a length for a time. */
export function dimensionOf(unit: Unit): string {
  return measure(unit).dimension;
}

function measure(unit: Unit): { dimension: string; factor: Decimal } {
  if (unit === 'kn') return measure('nmi/h');
  const [top, bottom] = unitParts(unit);
  const a = UNIT_FACTORS[top];
  if (bottom === undefined) return { dimension: a.dimension, factor: new Exact(a.factor) };
  const b = UNIT_FACTORS[bottom];
  return { dimension: `${a.dimension}/${b.dimension}`, factor: new Exact(a.factor).div(b.factor) };
}

/** Whether the one unit converts into the other without a calendar or a density. */
export function isConvertible(from: Unit, to: Unit): boolean {
  return dimensionOf(from) === dimensionOf(to);
}

/**
 * How many of `to` one of `from` is, as decimal text: exact where it ends, else 28 significant digits.
 * @throws BugError when the two measure different things.
 * @example conversionFactor('ft', 'm') // '0.3048'
 */
export function conversionFactor(from: Unit, to: Unit): string {
  const a = measure(from);
  const b = measure(to);
  if (a.dimension !== b.dimension)
    throw new BugError(`${from} (${a.dimension}) does not convert into ${to} (${b.dimension})`);
  return a.factor.div(b.factor).toSignificantDigits(28).toFixed();
}

/**
 * The same quantity in another unit of its dimension.
 * @returns decimal text of at most 20 decimals, exact where the result ends within them.
 * @throws BugError when the two units measure different things.
 * @example convert(quantity('523', 'ft'), 'm').value // '159.4104'
 */
export function convert<U extends Unit>(from: Quantity, to: U): Quantity<U> {
  if (from.unit === to) return new Quantity(from.value, to);
  const a = measure(from.unit);
  const b = measure(to);
  if (a.dimension !== b.dimension) throw new BugError(`${from.unit} does not convert into ${to}`);
  const result = new Exact(from.value).times(a.factor).div(b.factor);
  const whole = Math.max(result.trunc().precision(true), 1);
  const decimals = Math.max(Math.min(20, 28 - whole), 0);
  return new Quantity(result.toDecimalPlaces(decimals).toFixed(), to);
}

/** The amount as a double in a unit of the same dimension, for geometry and other floating work. */
export function amountIn(from: Quantity, to: Unit): number {
  return Number(convert(from, to).value);
}

/** Negative, zero or positive as the first is less than, equal to or greater than the second. @throws BugError on unlike dimensions. */
export function compareQuantities(a: Quantity, b: Quantity): number {
  const first = measure(a.unit);
  const second = measure(b.unit);
  if (first.dimension !== second.dimension) throw new BugError(`${a.unit} does not compare with ${b.unit}`);
  return new Exact(a.value).times(first.factor).cmp(new Exact(b.value).times(second.factor));
}
