import { at, type Finding } from '../base';
import { dimensionOf, isConvertible } from './convert';
import { UNIT_FACTORS } from './factors';
import { Quantity, isDecimalText, quantity } from './quantity';
import { spelledUnit } from './spelling';
import { isUnit, unitParts, type Unit } from './unit';

const TYPED = /^(\$)?\s*(-?[\d.,]+)\s*(.*)$/;
const THOUSANDS = /^-?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;

/** What the place of a typed text asks for. */
export interface Expected {
  /** Where the text stands, for the finding. */
  readonly place: string;
  /** A unit of the dimension wanted; any unit of that dimension is accepted. */
  readonly like: Unit;
  /** Whether a negative amount makes sense here. */
  readonly mayBeNegative?: boolean;
}

/**
 * Reads a quantity as typed: `523 ft`, `9,950 long tons`, `9950lt`, `956nmi`, `$245,000`.
 * @returns the quantity in the unit typed, or the finding: no unit, unknown or ambiguous unit, wrong
 * dimension, negative amount, not a plain number.
 * @example parseQuantity('9,950 long tons', { place: '/vessel/lightship', like: 't' })
 */
export function parseQuantity(text: string, expected: Expected): Quantity | Finding {
  const match = TYPED.exec(text.trim().slice(0, 200));
  if (!match) return notANumber(text, expected);
  const [digits, behind] = [at(match, 2), at(match, 3)];
  const plain = THOUSANDS.test(digits) ? digits.replaceAll(',', '') : digits;
  if (!isDecimalText(plain)) return notANumber(text, expected);
  const written = match[1] === '$' ? `USD${behind}` : behind;
  if (written === '' && expected.like !== '1') return noUnit(text, expected);
  const spelled = written === '' ? { unit: expected.like } : spelledUnit(written);
  if (spelled === 'unknown') return unknownUnit(text, written, expected);
  if ('choose' in spelled) return ambiguousUnit(text, written, spelled.choose, expected);
  return checked(quantity(plain, spelled.unit), expected);
}

/**
 * Reads a quantity as the document keeps it: decimal text and a unit apart.
 * @returns the quantity, or the finding.
 */
export function readQuantity(value: string, unit: string, expected: Expected): Quantity | Finding {
  if (!isDecimalText(value)) return notANumber(value, expected);
  if (unit === '' && expected.like !== '1') return noUnit(value, expected);
  if (isUnit(unit)) return checked(quantity(value, unit), expected);
  const spelled = spelledUnit(unit);
  if (spelled === 'unknown') return unknownUnit(value, unit, expected);
  if ('choose' in spelled) return ambiguousUnit(value, unit, spelled.choose, expected);
  return checked(quantity(value, spelled.unit), expected);
}

/** Whether a reading gave a quantity and not a finding. */
export function isQuantity(reading: Quantity | Finding): reading is Quantity {
  return reading instanceof Quantity;
}

function checked(found: Quantity, expected: Expected): Quantity | Finding {
  if (!isConvertible(found.unit, expected.like))
    return finding(
      'units/wrong-dimension',
      expected,
      `${found.toString()} measures ${dimensionOf(found.unit)}, but ${dimensionOf(expected.like)} is asked for here.`,
      `Give the amount in ${wordsOf(expected.like)} or another unit of ${dimensionOf(expected.like)}.`,
    );
  if (found.value.startsWith('-') && expected.mayBeNegative !== true)
    return finding(
      'units/negative',
      expected,
      `${found.toString()} is negative.`,
      'Give an amount of zero or more.',
    );
  return found;
}

function notANumber(text: string, expected: Expected): Finding {
  return finding(
    'units/not-a-number',
    expected,
    `"${text.slice(0, 40)}" is not a number with a unit.`,
    `Write digits with a decimal point and a unit, such as "1250.5 ${expected.like}".`,
  );
}

function noUnit(text: string, expected: Expected): Finding {
  return finding(
    'units/no-unit',
    expected,
    `"${text.slice(0, 40)}" has no unit.`,
    `Add the unit, such as ${wordsOf(expected.like)} (${expected.like}).`,
  );
}

function unknownUnit(text: string, written: string, expected: Expected): Finding {
  return finding(
    'units/unknown-unit',
    expected,
    `"${text.slice(0, 40)}": the unit "${written.slice(0, 30)}" is not known.`,
    `Use a unit of ${dimensionOf(expected.like)}, such as ${expected.like}.`,
  );
}

function ambiguousUnit(text: string, written: string, choose: string, expected: Expected): Finding {
  return finding(
    'units/ambiguous-unit',
    expected,
    `"${text.slice(0, 40)}": "${written.slice(0, 30)}" can mean more than one unit.`,
    `Say which: ${choose}.`,
  );
}

function finding(code: string, expected: Expected, message: string, remedy: string): Finding {
  return {
    code,
    weight: 'blocks',
    place: expected.place,
    message,
    meaning: 'The amount is not taken, and what depends on it stays as it was.',
    remedy,
  };
}

/** A unit in words: `long tons`, `US dollars per hours` for a rate. */
export function wordsOf(unit: Unit): string {
  return unitParts(unit)
    .flatMap(part => (part === undefined ? [] : [UNIT_FACTORS[part].words || 'one']))
    .join(' per ');
}
