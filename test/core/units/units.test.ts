import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BugError } from '../../../core/base';
import {
  PLAIN_UNITS,
  UNIT_FACTORS,
  amountIn,
  compareQuantities,
  conversionFactor,
  convert,
  dimensionOf,
  isConvertible,
  isQuantity,
  parseQuantity,
  quantity,
  readQuantity,
  type Unit,
} from '../../../core/units';

/** NIST SP 811 (2008), Appendix B.8, as printed to seven figures; knot and nautical mile from its table 8. */
const SP811: readonly [Unit, Unit, number][] = [
  ['ft', 'm', 0.3048],
  ['nmi', 'm', 1852],
  ['ft2', 'm2', 9.290304e-2],
  ['ft3', 'm3', 2.831685e-2],
  ['gal', 'm3', 3.785412e-3],
  ['bbl', 'm3', 1.589873e-1],
  ['lb', 'kg', 4.535924e-1],
  ['long-ton', 'kg', 1.016047e3],
  ['short-ton', 'kg', 9.071847e2],
];

describe('units', () => {
  it('convert by the factors that NIST SP 811 prints, to its seven figures', () => {
    for (const [from, to, factor] of SP811)
      expect(Number(conversionFactor(from, to)).toPrecision(7)).toBe(factor.toPrecision(7));
  });

  it('keep the definitions of NIST Handbook 44 exactly: 2240 lb, 2000 lb, 42 gallons, 231 cubic inches', () => {
    expect(convert(quantity('1', 'long-ton'), 'lb').value).toBe('2240');
    expect(convert(quantity('1', 'short-ton'), 'lb').value).toBe('2000');
    expect(convert(quantity('1', 'bbl'), 'gal').value).toBe('42');
    expect(convert(quantity('1728', 'gal'), 'ft3').value).toBe('231');
    expect(convert(quantity('523', 'ft'), 'm').value).toBe('159.4104');
    expect(amountIn(quantity('6', 'kn'), 'm/h')).toBe(11112);
  });

  it('have a factor with a source each, and only like dimensions convert', () => {
    for (const unit of PLAIN_UNITS) expect(UNIT_FACTORS[unit].source).not.toBe('');
    expect(isConvertible('work-day', 'day')).toBe(false);
    expect(isConvertible('month', 'day')).toBe(false);
    expect(isConvertible('USD/ft2', 'USD/m2')).toBe(true);
    expect(() => convert(quantity('1', 't'), 'm3')).toThrow(BugError);
  });

  it('come back unchanged from a conversion there and back', () => {
    const amounts = fc.integer({ min: 0, max: 10_000_000 }).map(n => (n / 1000).toFixed(3));
    fc.assert(
      fc.property(
        amounts,
        fc.constantFrom(...PLAIN_UNITS),
        fc.constantFrom(...PLAIN_UNITS),
        (amount, from, to) => {
          fc.pre(dimensionOf(from) === dimensionOf(to));
          const back = convert(convert(quantity(amount, from), to), from);
          expect(Number(back.value)).toBeCloseTo(Number(amount), 9);
        },
      ),
    );
  });

  it('do not compare or add by accident', () => {
    const [ten, nine] = [quantity('10', 't'), quantity('9', 't')];
    expect(() => Number(ten)).toThrow(BugError);
    expect(compareQuantities(ten, nine)).toBeGreaterThan(0);
    expect(compareQuantities(quantity('1', 'long-ton'), quantity('1', 't'))).toBeGreaterThan(0);
    expect(JSON.parse(JSON.stringify(ten))).toEqual({ value: '10', unit: 't' });
  });
});

describe('typed quantities', () => {
  const read = (text: string, like: Unit, mayBeNegative = false) => {
    const found = parseQuantity(text, { place: '/x', like, mayBeNegative });
    return isQuantity(found) ? found.toString() : found.code;
  };

  it.each([
    ['523 ft', 'm', '523 ft'],
    ['523ft', 'm', '523 ft'],
    ['9,950 long tons', 't', '9950 long-ton'],
    ['9950lt', 't', '9950 long-ton'],
    ['956nmi', 'nmi', '956 nmi'],
    ['$245,000', 'USD', '245000 USD'],
    ['$85.50/h', 'USD/h', '85.5 USD/h'],
    ['0.5 h per m2', 'h/m2', '0.5 h/m2'],
    ['12 work days', 'work-day', '12 work-day'],
    ['3472 m²', 'ft2', '3472 m2'],
    ['0.15', '1', '0.15'],
  ] as const)('"%s" is read as written', (text, like, expected) => {
    expect(read(text, like)).toBe(expected);
  });

  it.each([
    ['9950', 't', 'units/no-unit'],
    ['9950 tons', 't', 'units/ambiguous-unit'],
    ['12 days', 'work-day', 'units/ambiguous-unit'],
    ['12 furlongs', 'm', 'units/unknown-unit'],
    ['12 kg', 'm', 'units/wrong-dimension'],
    ['-12 t', 't', 'units/negative'],
    ['1e999 t', 't', 'units/unknown-unit'],
    ['twelve', 'm', 'units/not-a-number'],
    ['1.234,5 m', 'm', 'units/not-a-number'],
    ['12,34 m', 'm', 'units/not-a-number'],
    ['', 'm', 'units/not-a-number'],
  ] as const)('"%s" is a finding and no figure', (text, like, code) => {
    expect(read(text, like)).toBe(code);
  });

  it('kept as value and unit apart are read alike', () => {
    expect(readQuantity('9950', 'long-ton', { place: '/x', like: 't' })).toEqual(
      quantity('9950', 'long-ton'),
    );
    expect(readQuantity('9950', '', { place: '/x', like: 't' })).toMatchObject({
      code: 'units/no-unit',
      place: '/x',
    });
    expect(readQuantity('1e999', 't', { place: '/x', like: 't' })).toMatchObject({
      code: 'units/not-a-number',
    });
  });

  it('of hostile length are refused in no time', () => {
    const started = performance.now();
    for (const text of [
      '9'.repeat(50_000),
      ','.repeat(50_000),
      `${' '.repeat(50_000)}ft`,
      '1 '.repeat(25_000),
    ])
      expect(typeof read(text, 'm')).toBe('string');
    expect(performance.now() - started).toBeLessThan(500);
  });
});
