import { describe, expect, it } from 'vitest';
import { readTypedAmount } from '../../../core/units';

describe('a typed number', () => {
  it.each([
    ['12.5', '12.5'],
    ['1,234.50', '1234.50'],
    ['1 234', '1234'],
    ['\u221212', '-12'],
    [' 7 ', '7'],
    ['.5', '0.5'],
  ])('%j alone is in the unit of its field', (typed, value) => {
    expect(readTypedAmount(typed, 'm')).toEqual({ value });
  });

  // NIST SP 811 (2008), appendix B.8: 1 ft = 0.3048 m, 1 mi = 1609.344 m, 1 nmi = 1852 m, 1 lb = 0.45359237 kg.
  it.each([
    ['240 ft', 'm', '73.152'],
    ["240'", 'm', '73.152'],
    ['73.152 m', 'ft', '240'],
    ['9,950 long tons', 'long-ton', '9950'],
    ['1 long ton', 'kg', '1016.0469088'],
    ['1,234,567.89 lb', 'lb', '1234567.89'],
    ['80.123456 km', 'm', '80123.456'],
    // 1,234,567 / 0.3048 = 4,050,416.6667 (NIST SP 811 factor).
    ['1234567 m', 'ft', '4050416.667'],
    ['130 m', 'ft', '426.509'],
    ['50 mi', 'm', '80467.2'],
    ['50 statute miles', 'km', '80.4672'],
    ['100 nm', 'km', '185.2'],
    ['$12/hr', 'USD/h', '12'],
    ['$ 1 234', 'USD', '1234'],
    ['$12 per sq ft', 'USD/ft2', '12'],
    ['4 h', 'h/each', '4'],
    ['3 pieces', 'each', '3'],
  ])('%j is kept in %j as %j', (typed, unit, value) => {
    expect(readTypedAmount(typed, unit)).toEqual({ value });
  });

  it.each([
    ['75%', '0.75'],
    ['7.5 %', '0.075'],
    ['120 percent', '1.2'],
    ['0.75', '0.75'],
  ])('the share %j is %j', (typed, value) => {
    expect(readTypedAmount(typed, '1')).toEqual({ value });
  });
});

describe('a typed number that is not taken', () => {
  it('names the units that are, when its own is not known', () => {
    expect(readTypedAmount('12 cubits', 'm')).toEqual({
      fault:
        '"12 cubits": the unit "cubits" is not known. Write a number such as 1,250.5, which is then in m, or put one of these units behind it: m, mm, km, ft, mi, nmi.',
    });
  });

  it('names the units that are, when its own measures something else', () => {
    expect(readTypedAmount('12 ft', 't')).toEqual({
      fault:
        '12 ft measures length, but mass is asked for here. Write a number such as 1,250.5, which is then in tonnes, or put one of these units behind it: kg, lb, tonnes, long tons, short tons.',
    });
  });

  it.each([
    ['9 tons', 't', 'Say which: long tons, short tons or tonnes.'],
    ['30 days', 'day', 'Say which: work days or calendar days.'],
    ['50 miles', 'nmi', 'Say which: statute miles (mi) or nautical miles (nmi).'],
  ])('%j asks which of its units is meant', (typed, unit, words) => {
    expect(JSON.stringify(readTypedAmount(typed, unit))).toContain(words);
  });

  it.each(['75%', '$5', '1,5', '12,34', '1e9', '1.2.3', '--1', '', 'long', 'Infinity', '0x10'])(
    '%j is no length',
    typed => {
      expect(readTypedAmount(typed, 'm')).toHaveProperty('fault');
    },
  );

  it('has no unit where none is kept', () => {
    expect(readTypedAmount('12 ft', undefined)).toEqual({
      fault: '"12 ft" has a unit. Write a plain number, such as 1,250.5, without a unit.',
    });
  });
});
