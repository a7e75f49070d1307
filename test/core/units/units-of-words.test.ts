import { describe, expect, it } from 'vitest';
import { parseQuantity, readTypedAmount, unitParts, wordsOf } from '../../../core/units';

describe('a unit in words', () => {
  it('names both units of a rate, and one where it is a plain number', () => {
    expect([wordsOf('USD/h'), wordsOf('m2'), wordsOf('1')]).toEqual([
      'US dollars per hours',
      'square metres',
      'one',
    ]);
  });

  it('has one part or two; a text that is no unit is a fault of ours', () => {
    expect([unitParts('h/m2'), unitParts('t')]).toEqual([
      ['h', 'm2'],
      ['t', undefined],
    ]);
    const text: string = 'furlong';
    expect(() => unitParts(text as 'm')).toThrow();
  });
});

describe('a quantity that names a unit which could be several', () => {
  it('is asked back, above and below the stroke of a rate', () => {
    const asked = (text: string, like: 't' | 'USD/t' | 'USD/day') => {
      const read = parseQuantity(text, { place: '/x', like });
      return 'remedy' in read ? read.remedy : '';
    };
    expect(asked('12 tons', 't')).toContain('long tons, short tons or tonnes');
    expect(asked('12 USD/ton', 'USD/t')).toContain('long tons, short tons or tonnes');
    expect(asked('12 USD per day', 'USD/day')).toContain('work days or calendar days');
  });

  it('is read with a dollar sign in front, alone and as a rate', () => {
    expect(parseQuantity('$245,000', { place: '/x', like: 'USD' })).toMatchObject({
      value: '245000',
      unit: 'USD',
    });
    expect(parseQuantity('$12/h', { place: '/x', like: 'USD/h' })).toMatchObject({
      value: '12',
      unit: 'USD/h',
    });
  });
});

describe('what is accepted where a typed number cannot be read', () => {
  const fault = (like: string | undefined) => {
    const read = readTypedAmount('many', like);
    return 'fault' in read ? read.fault : '';
  };

  it('is a number or percent for a share, a number alone without a unit, and the units that convert else', () => {
    expect(fault('1')).toContain('a share such as 25%');
    expect(fault(undefined)).toContain('without a unit');
    expect(fault('m')).toContain('or put one of these units behind it');
  });

  it('names no other unit where none converts', () => {
    expect(fault('USD')).toMatch(/which is then in [^,]*\.$/);
  });
});
