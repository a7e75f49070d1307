import { describe, expect, it } from 'vitest';
import { BugError } from '../../../core/base';
import {
  compareDecimals,
  compareQuantities,
  conversionFactor,
  convert,
  decimalDifference,
  decimalProduct,
  decimalQuotient,
  isDecimalText,
  isUnit,
  parseQuantity,
  quantity,
  readQuantity,
  unitParts,
  wordsOf,
  type Unit,
} from '../../../core/units';

const at = (like: Unit) => ({ place: '/x', like });
const MEANING = 'The amount is not taken, and what depends on it stays as it was.';

describe('a text that is not taken as a quantity', () => {
  it.each([
    [
      'about nine thousand nine hundred and fifty of them',
      't',
      'units/not-a-number',
      '"about nine thousand nine hundred and fif" is not a number with a unit.',
      'Write digits with a decimal point and a unit, such as "1250.5 t".',
    ],
    ['12', 'ft', 'units/no-unit', '"12" has no unit.', 'Add the unit, such as feet (ft).'],
    [
      '12 cubits',
      'm',
      'units/unknown-unit',
      '"12 cubits": the unit "cubits" is not known.',
      'Use a unit of length, such as m.',
    ],
    [
      '9 tons',
      't',
      'units/ambiguous-unit',
      '"9 tons": "tons" can mean more than one unit.',
      'Say which: long tons, short tons or tonnes.',
    ],
    [
      '12 ft',
      't',
      'units/wrong-dimension',
      '12 ft measures length, but mass is asked for here.',
      'Give the amount in tonnes or another unit of mass.',
    ],
    ['-3 ft', 'm', 'units/negative', '-3 ft is negative.', 'Give an amount of zero or more.'],
  ] as const)(
    '"%s" is told with its place, what it means and what to do',
    (text, like, code, message, remedy) => {
      expect(parseQuantity(text, at(like))).toEqual({
        code,
        weight: 'blocks',
        place: '/x',
        message,
        meaning: MEANING,
        remedy,
      });
    },
  );

  it('is cut short in what is said of it', () => {
    const long = `1 ${'cubit'.repeat(20)}`;
    expect(parseQuantity(long, at('m'))).toMatchObject({
      message: `"${long.slice(0, 40)}": the unit "${long.slice(2, 32)}" is not known.`,
    });
    expect(parseQuantity(`1${'0'.repeat(40)} ft`, at('m'))).toMatchObject({ code: 'units/not-a-number' });
    const tons = `9${' '.repeat(60)}tons`;
    expect(parseQuantity(tons, at('t'))).toMatchObject({
      message: `"${tons.slice(0, 40)}": "tons" can mean more than one unit.`,
    });
    expect(parseQuantity('9'.repeat(50), at('t'))).toMatchObject({
      message: `"${'9'.repeat(40)}" is not a number with a unit.`,
    });
  });

  it('is measured by its first 200 signs, blanks before it apart', () => {
    expect(parseQuantity(`${' '.repeat(300)}12 ft`, at('m'))).toEqual(quantity('12', 'ft'));
    expect(parseQuantity(`12 ft${' '.repeat(300)}x`, at('m'))).toEqual(quantity('12', 'ft'));
  });
});

describe('a share', () => {
  it('needs no unit, typed or kept', () => {
    expect(parseQuantity('0.15', at('1'))).toEqual(quantity('0.15', '1'));
    expect(readQuantity('0.15', '', at('1'))).toMatchObject({ code: 'units/unknown-unit' });
    expect(readQuantity('0.15', '1', at('1'))).toEqual(quantity('0.15', '1'));
    expect(parseQuantity('15 %', at('1'))).toMatchObject({ remedy: 'Say which: a share such as 0.15.' });
  });
});

describe('a quantity of the document', () => {
  it('is read by its unit or its spelling, or is a finding', () => {
    expect(readQuantity('3', 'ft', at('m'))).toEqual(quantity('3', 'ft'));
    expect(readQuantity('3', 'feet', at('m'))).toEqual(quantity('3', 'ft'));
    expect(readQuantity('3', 'day', at('day'))).toEqual(quantity('3', 'day'));
    expect(readQuantity('3', '', at('m'))).toMatchObject({ code: 'units/no-unit' });
    expect(readQuantity('3', 'furlongs', at('m'))).toMatchObject({ code: 'units/unknown-unit' });
    expect(readQuantity('3', 'days', at('day'))).toMatchObject({ code: 'units/ambiguous-unit' });
    expect(readQuantity('three', 'ft', at('m'))).toMatchObject({ code: 'units/not-a-number' });
    expect(readQuantity('-3', 'ft', { ...at('m'), mayBeNegative: true })).toEqual(quantity('-3', 'ft'));
  });
});

describe('spellings', () => {
  const read: readonly (readonly [string, Unit])[] = [
    ['12  US   Dollars per   Hour', 'USD/h'],
    ['$12/hr', 'USD/h'],
    ['3 hours per square metres', 'h/m2'],
    ['7 usd', 'USD'],
    ['4 calendar days', 'day'],
  ];
  it.each(read)('"%s" is read', (text, unit) => {
    expect(parseQuantity(text, at(unit))).toMatchObject({ unit });
  });

  it.each([
    ['3 USD/h/m', 'units/unknown-unit'],
    ['3 cubits/h', 'units/unknown-unit'],
    ['3 USD/cubit', 'units/unknown-unit'],
    ['3 USD per', 'units/unknown-unit'],
    ['3 USD/ton', 'units/ambiguous-unit'],
    ['3 USD/day', 'units/ambiguous-unit'],
    ['3 day', 'units/ambiguous-unit'],
  ])('"%s" is not guessed', (text, code) => {
    expect(parseQuantity(text, at('USD/h'))).toMatchObject({ code });
  });

  it('say which units a day or a ton for something may be', () => {
    expect(parseQuantity('3 USD/ton', at('USD/t'))).toMatchObject({
      remedy: 'Say which: long tons, short tons or tonnes.',
    });
  });
});

describe('units', () => {
  it('are one plain unit or two, and nothing else', () => {
    expect(['m', 'USD/h', 'm/m'].every(isUnit)).toBe(true);
    expect(['', 'x', 'x/m', 'm/x', 'm/m/m', 'm/'].some(isUnit)).toBe(false);
    expect(unitParts('m')).toEqual(['m', undefined]);
    expect(unitParts('USD/h')).toEqual(['USD', 'h']);
  });

  it('are told in words', () => {
    expect(wordsOf('USD/h')).toBe('US dollars per hours');
    expect(wordsOf('long-ton')).toBe('long tons');
  });

  it('that measure different things neither convert nor compare', () => {
    expect(() => conversionFactor('m', 't')).toThrow('m (length) does not convert into t (mass)');
    expect(() => convert(quantity('1', 'm'), 't')).toThrow('m does not convert into t');
    expect(() => compareQuantities(quantity('1', 'm'), quantity('1', 't'))).toThrow(
      'm does not compare with t',
    );
    expect(() => conversionFactor('USD/h', 'USD')).toThrow('USD/h (money/time)');
    expect(() => conversionFactor('USD/m', 'USD/h')).toThrow(BugError);
  });
});

describe('conversions', () => {
  it('keep 28 digits in all and at most 20 decimals', () => {
    // 1 / 0.3048 = 3.28083989501312335958005249343832... (NIST SP 811 gives 3.280840 to seven figures).
    expect(convert(quantity('1', 'm'), 'ft').value).toBe('3.28083989501312335958');
    expect(convert(quantity('1000000000000', 'm'), 'ft').value).toBe('3280839895013.123359580052493');
    expect(convert(quantity('0.5', 'm'), 'm').value).toBe('0.5');
  });
});

describe('plain decimal text', () => {
  it('has at most 30 digits', () => {
    expect(isDecimalText('9'.repeat(30))).toBe(true);
    expect(isDecimalText(`-${'9'.repeat(29)}.9`)).toBe(true);
    expect(isDecimalText('9'.repeat(31))).toBe(false);
    expect(isDecimalText(`-${'9'.repeat(29)}.99`)).toBe(false);
    expect(['1e9', '', '-', '.', '1.', '+1', '1,0', 'NaN'].some(isDecimalText)).toBe(false);
  });

  it('makes a quantity, which is nothing else by accident', () => {
    expect(() => quantity('1e9', 'm')).toThrow('a quantity needs plain decimal text, not "1e9"');
    expect(() => Number(quantity('1', 'm'))).toThrow('a quantity is not a number: use convert');
    expect(quantity(0.0000001, 'm').value).toBe('0.0000001');
    expect(quantity('-0.00', 'm').value).toBe('0');
    expect(quantity('12', 'm').toString()).toBe('12 m');
    expect(quantity('12', '1').toString()).toBe('12');
    expect(JSON.stringify(quantity('12', 'm'))).toBe('{"value":"12","unit":"m"}');
  });

  it('is multiplied, subtracted, divided and compared exactly', () => {
    expect(decimalProduct('0.1', '0.2')).toBe('0.02');
    expect(decimalDifference('0.3', '0.1')).toBe('0.2');
    expect(decimalQuotient('1', '8')).toBe('0.125');
    expect(decimalQuotient('1', '0')).toBeUndefined();
    expect(compareDecimals('0.30', '0.3')).toBe(0);
    expect(compareDecimals('0.2', '0.3')).toBeLessThan(0);
    expect(compareDecimals('10', '9')).toBeGreaterThan(0);
  });
});
