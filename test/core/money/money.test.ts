import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BugError } from '../../../core/base';
import {
  Money,
  allocate,
  compareMoney,
  cumulativeShares,
  dollarsOf,
  fromCents,
  minus,
  moneyText,
  negated,
  parseMoney,
  plus,
  roundToCents,
  sumMoney,
} from '../../../core/money';

const cents = fc.integer({ min: -1_000_000_000_000, max: 1_000_000_000_000 });
const ratios = fc
  .array(
    fc.integer({ min: 0, max: 1_000_000 }).map(n => (n / 1000).toFixed(3)),
    { minLength: 1, maxLength: 30 },
  )
  .filter(list => list.some(ratio => Number(ratio) > 0));

describe('money', () => {
  it.each([
    ['2.345', 235],
    ['-2.345', -235],
    ['1.005', 101],
    ['-1.005', -101],
    ['0.0049', 0],
    ['-0.0049', 0],
  ])('rounds %s dollars half away from zero, credits too', (text, expected) => {
    expect(roundToCents(text).cents).toBe(expected);
    expect(roundToCents(Number(text)).cents).toBe(expected);
  });

  it('is whole cents, adds exactly and never by accident', () => {
    expect(sumMoney([fromCents(10), fromCents(20)]).cents).toBe(30);
    expect(minus(plus(fromCents(5), fromCents(7)), fromCents(12)).cents).toBe(0);
    expect(() => fromCents(0.5)).toThrow(BugError);
    expect(() => Number(fromCents(5))).toThrow(BugError);
    expect(() => sumMoney([fromCents(Number.MAX_SAFE_INTEGER), fromCents(1)])).toThrow(BugError);
  });

  it('prints decimal text with two decimals and a number with at most two', () => {
    expect(moneyText(fromCents(-125_050))).toBe('-1250.50');
    expect(dollarsOf(fromCents(7))).toBe(0.07);
    fc.assert(
      fc.property(cents, n => {
        expect(roundToCents(moneyText(fromCents(n))).cents).toBe(n);
        expect(Math.round(dollarsOf(fromCents(n)) * 100)).toBe(n);
      }),
    );
  });

  it('is read from the document or is a finding with its place', () => {
    expect(parseMoney('$1,250.50', '/x')).toEqual(fromCents(125_050));
    for (const text of ['1.005', '1e9', 'abc', '', '99999999999999999999'])
      expect(parseMoney(text, '/x')).toMatchObject({ code: 'money/not-an-amount', place: '/x' });
  });

  it.each([
    [' 12 ', 1200],
    ['$ 7', 700],
    ['1,234,567', 123_456_700],
    ['-12,345.60', -1_234_560],
    ['123,456', 12_345_600],
  ])('reads "%s"', (text, expected) => {
    expect(parseMoney(text, '/x')).toEqual(fromCents(expected));
  });

  it.each(['1234,567', '1,23', '1,234x', 'x1,234', '12$5', '1,234.5.6', '1,2345'])(
    'does not guess what "%s" means',
    text => {
      expect(parseMoney(text, '/x')).toMatchObject({ code: 'money/not-an-amount' });
    },
  );

  it('says what is wrong with an amount, cut short, and what to do', () => {
    const text = 'nine hundred and ninety-nine thousand dollars and some cents';
    expect(parseMoney(text, '/x')).toEqual({
      code: 'money/not-an-amount',
      weight: 'blocks',
      place: '/x',
      message: '"nine hundred and ninety-nine thousand do" is not an amount of dollars and cents.',
      meaning: 'The amount is not taken.',
      remedy: 'Write dollars with at most two decimals, such as 1250.50.',
    });
  });

  it('is shown and written as text, and compared by its cents', () => {
    expect(`${String(fromCents(-5))} ${fromCents(120).toString()}`).toBe('-0.05 1.20');
    expect(JSON.stringify(fromCents(125_050))).toBe('{"value":"1250.50","unit":"USD"}');
    expect(compareMoney(fromCents(3), fromCents(5))).toBe(-2);
    expect(compareMoney(fromCents(5), fromCents(3))).toBe(2);
    expect(Object.is(new Money(-0).cents, 0)).toBe(true);
  });

  it('names the mistake of its caller', () => {
    expect(() => fromCents(0.5)).toThrow('0.5 is not a whole number of cents');
    expect(() => Number(fromCents(5))).toThrow('money is not a number: use plus, minus');
    expect(() => roundToCents('Infinity')).toThrow('Infinity is not an amount of money');
  });
});

describe('allocate(total, ratios)', () => {
  it('adds up to the total to the cent, each part within one cent of its share', () => {
    fc.assert(
      fc.property(cents, ratios, (total, list) => {
        const parts = allocate(fromCents(total), list);
        expect(sumMoney(parts).cents).toBe(total);
        const whole = list.reduce((a, b) => a + Number(b), 0);
        parts.forEach((part, i) => {
          const share = (total * Number(list[i])) / whole;
          expect(Math.abs(part.cents - share)).toBeLessThan(1 + Math.abs(total) * 1e-12);
        });
      }),
    );
  });

  it('splits a credit like the same charge with the sign turned', () => {
    fc.assert(
      fc.property(cents, ratios, (total, list) => {
        const turned = allocate(fromCents(-total), list).map(part => negated(part).cents);
        expect(turned).toEqual(allocate(fromCents(total), list).map(part => part.cents));
      }),
    );
  });

  it('apportions as the worked example of the largest remainder method', () => {
    // Votes 47000, 16000, 15800, 12000, 6100, 3100 for 10 seats give 5, 2, 1, 1, 1, 0.
    // Source: "Largest remainder method", Hare quota example, in the open encyclopedia Wikipedia (from memory).
    const seats = allocate(fromCents(10), [47000, 16000, 15800, 12000, 6100, 3100]);
    expect(seats.map(part => part.cents)).toEqual([5, 2, 1, 1, 1, 0]);
  });

  it('refuses negative ratios and ratios that are all zero', () => {
    expect(() => allocate(fromCents(1), [-1, 2])).toThrow('ratios of an allocation are zero or more');
    expect(() => allocate(fromCents(1), [0, 0])).toThrow('cannot be allotted to ratios that are all zero');
    expect(allocate(fromCents(0), [0, 0]).map(part => part.cents)).toEqual([0, 0]);
  });
});

describe('ties of an allocation', () => {
  it('go to the earlier part, in a charge and in a credit', () => {
    const halves = (total: number) => allocate(fromCents(total), [1, 1, 1, 1]).map(part => part.cents);
    expect(halves(2)).toEqual([1, 1, 0, 0]);
    expect(halves(-2)).toEqual([-1, -1, 0, 0]);
    expect(allocate(fromCents(5), [1, 1]).map(part => part.cents)).toEqual([3, 2]);
  });

  it('go by the remainder before they go by the place', () => {
    expect(allocate(fromCents(10), [1, 6, 4]).map(part => part.cents)).toEqual([1, 5, 4]);
    expect(allocate(fromCents(10), [4, 6, 1]).map(part => part.cents)).toEqual([4, 5, 1]);
  });
});

describe('cumulativeShares(total, shares)', () => {
  it('adds up to the total to the cent, each part within one cent of its share', () => {
    fc.assert(
      fc.property(
        cents,
        fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 12 }),
        (total, list) => {
          const taken = list.reduce((a, b) => a + b, 0);
          const shares = [...list, 12_000 - taken].map(n => n / 12_000);
          const parts = cumulativeShares(
            fromCents(total),
            shares.map(s => s.toFixed(14)),
          );
          expect(sumMoney(parts).cents).toBe(total);
          parts.forEach((part, i) =>
            expect(Math.abs(part.cents - total * (shares[i] ?? 0))).toBeLessThan(1 + Math.abs(total) * 2e-10),
          );
        },
      ),
    );
  });

  it('refuses shares that do not add up to 1', () => {
    expect(() => cumulativeShares(fromCents(100), ['0.5', '0.4'])).toThrow('shares add up to 0.9, not to 1');
    expect(() => cumulativeShares(fromCents(100), ['1.5', '-0.5'])).toThrow(
      'shares of an amount are zero or more',
    );
    expect(() => cumulativeShares(fromCents(100), ['0', 'NaN'])).toThrow(
      'shares of an amount are zero or more',
    );
    expect(cumulativeShares(fromCents(100), [])).toEqual([]);
  });
});
