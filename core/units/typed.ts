import Decimal from 'decimal.js';
import type { Finding } from '../base';
import { convert, dimensionOf, isConvertible } from './convert';
import { isQuantity, parseQuantity } from './parse';
import type { Quantity } from './quantity';
import { PLAIN_UNITS, isUnit, unitParts, type Unit } from './unit';
import { unitWords } from './unit-words';

/** What was typed, as decimal text in the unit asked for, or a sentence that says what is accepted. */
export type TypedAmount = { readonly value: string } | { readonly fault: string };

const TYPED = /^(-?\s*\$?|\$\s*-)\s*(\d[\d,\s]*(?:\.\d+)?|\.\d+)\s*(.*)$/s;
const WHOLE = /^(?:\d{1,15}|\d{1,3}(?:[,\s]\d{3}){1,4})?$/;
const SHARE = /^(?:%|percent|per cent)$/i;
/** As many decimals as a typed figure of the document may have. */
const DECIMALS = 12;
/** Digits of a converted amount that does not end: finer than anything aboard is measured, and still to be read. */
const DIGITS = 6;

/**
 * Reads a number typed where a unit is known. Alone it is in that unit; a unit behind it is read and converted; a share
 * may be typed in percent. Commas and blanks stand between thousands only; a true minus is a minus.
 * @param like the unit the number is kept in, `1` for a share or factor; undefined where it has no unit.
 * @returns decimal text in `like`, as typed or converted, or what is wrong and what is accepted.
 * @source {@link convert} for the factors (NIST SP 811, NIST Handbook 44).
 * @example readTypedAmount('240 ft', 'm') // { value: '73.152' }
 */
export function readTypedAmount(text: string, like: string | undefined): TypedAmount {
  const found = TYPED.exec(text.trim().slice(0, 200).replace('\u2212', '-'));
  const digits = plainDigits(found?.[2] ?? '');
  if (found === null || digits === undefined)
    return { fault: `${said(text)} is no plain number. ${accepted(like)}` };
  const [, sign = '', , behind = ''] = found;
  const value = `${sign.includes('-') ? '-' : ''}${digits}`;
  const written = behind.trim();
  const isMoney = sign.includes('$');
  if (written === '' && (!isMoney || isMoneyUnit(like))) return { value };
  if (SHARE.test(written) && !isMoney) return shareOf(text, value, like);
  if (like === undefined || !isUnit(like)) return { fault: `${said(text)} has a unit. ${accepted(like)}` };
  return inUnit(`${value} ${isMoney ? 'USD ' : ''}${written}`, like);
}

/** Digits with thousands apart as plain decimal text; undefined when commas stand elsewhere. */
function plainDigits(typed: string): string | undefined {
  const [whole = '', fraction] = typed.trim().split('.');
  if (typed === '' || !WHOLE.test(whole) || (fraction ?? '').length > DECIMALS) return undefined;
  const digits = whole.replace(/[,\s]/g, '');
  return fraction === undefined ? digits : `${digits === '' ? '0' : digits}.${fraction}`;
}

function isMoneyUnit(like: string | undefined): boolean {
  return like === undefined || like === 'USD' || like.startsWith('USD/');
}

function shareOf(text: string, value: string, like: string | undefined): TypedAmount {
  if (like === '1') return { value: new Decimal(value).times('0.01').toFixed() };
  return { fault: `${said(text)} is a share, and no share is asked for here. ${accepted(like)}` };
}

function inUnit(typed: string, like: Unit): TypedAmount {
  const [top, bottom] = unitParts(like);
  const reading = amountLike(typed, like);
  if (isQuantity(reading)) return { value: valueIn(reading, like) };
  // Hours for one piece are typed as hours.
  const forOne = bottom === 'each' ? amountLike(typed, top) : reading;
  if (isQuantity(forOne)) return { value: valueIn(forOne, top) };
  const remedy = reading.code === 'units/ambiguous-unit' ? reading.remedy : accepted(like);
  return { fault: `${reading.message} ${remedy}` };
}

/** The amount in a unit: as typed in its own, else converted. */
function valueIn(typed: Quantity, unit: Unit): string {
  return typed.unit === unit ? typed.value : inFew(convert(typed, unit));
}

function amountLike(typed: string, like: Unit): Quantity | Finding {
  return parseQuantity(typed, { place: '', like, mayBeNegative: true });
}

/** An amount that ends within twelve digits is exact; one that does not is told to six digits and three decimals at least. */
function inFew({ value }: Quantity): string {
  const exact = new Decimal(value);
  if (exact.precision(true) <= DECIMALS) return exact.toDecimalPlaces(DECIMALS).toFixed();
  const whole = exact.trunc().precision(true);
  return exact
    .toSignificantDigits(Math.max(DIGITS, whole + 3))
    .toDecimalPlaces(DECIMALS)
    .toFixed();
}

/** What may be typed where a unit is asked for, in one sentence. */
function accepted(like: string | undefined): string {
  if (like === '1') return 'Write a number such as 0.25, or a share such as 25%.';
  const units =
    like === undefined || !isUnit(like)
      ? []
      : unitsLike(like)
          .map(unitWords)
          .filter(one => one !== '');
  if (like === undefined || units.length === 0)
    return 'Write a plain number, such as 1,250.5, without a unit.';
  const alone = `Write a number such as 1,250.5, which is then in ${unitWords(like)}`;
  return units.length === 1
    ? `${alone}.`
    : `${alone}, or put one of these units behind it: ${units.join(', ')}.`;
}

/** The units that convert into one: of a rate those with the same unit above. */
function unitsLike(like: Unit): readonly Unit[] {
  const [top, bottom] = unitParts(like);
  if (bottom === undefined) return PLAIN_UNITS.filter(unit => isConvertible(unit, like));
  return PLAIN_UNITS.filter(unit => dimensionOf(unit) === dimensionOf(bottom)).map(
    unit => `${top}/${unit}` as const,
  );
}

function said(text: string): string {
  return `"${text.trim().slice(0, 40)}"`;
}
