import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../../core/sheet/decimal';
import { ABSENT, Cells, DUST, MOST, NEAR, TINY, operandOf, tens } from '../../../core/sheet/quick/cells';
import {
  added,
  compared,
  comparedWhole,
  dividedBy,
  multiplied,
  subtracted,
} from '../../../core/sheet/quick/operations';
import {
  settled,
  settledNear,
  settledProduct,
  settledWhole,
  wholeAbove,
} from '../../../core/sheet/quick/settling';
import { isReadWhole, textOfWhole, wholeOfText } from '../../../core/sheet/quick/text';

const OUT = 9;

/** A cell: decimal text is exact, a number is near with an error, nothing is absent. */
type Content = string | readonly [number, number] | undefined;

function cellsOf(...contents: readonly Content[]): Cells {
  const cells = new Cells(10);
  contents.forEach((content, cell) => {
    if (content === undefined) cells.putAbsent(cell);
    else if (typeof content === 'string') {
      const read = wholeOfText(content);
      if (read === undefined) cells.putExact(cell, new Exact(content));
      else cells.putWhole(cell, read.whole, read.decimals);
    } else cells.putNear(cell, content[0], content[1]);
  });
  return cells;
}

/** What stands in a cell: text of an exact one, the double of a near one in brackets. */
function shown(cells: Cells, cell = OUT): string {
  const state = cells.stateOf(cell);
  if (state === ABSENT) return 'absent';
  return state === NEAR ? `(${cells.near(cell)})` : textOfWhole(cells.mantissaOf(cell), state);
}

type Operation = (cells: Cells, operands: readonly number[], out: number) => boolean;
const OPERATIONS: Readonly<Record<string, Operation>> = {
  added: (cells, operands, out) => added(cells, operands, out),
  subtracted: (cells, [a = -1, b = -1], out) => subtracted(cells, a, b, out),
  multiplied,
  divided: (cells, [a = -1, b = -1], out) => dividedBy(cells, a, b, out),
};

/** The result of an operation on cells, and whether it knew one. */
function result(operation: string, ...contents: readonly Content[]): string {
  const cells = cellsOf(...contents);
  const isKnown = OPERATIONS[operation]?.(cells, [...contents.keys()], OUT);
  return isKnown === true ? shown(cells) : 'to be worked out';
}

describe('arithmetic on whole numbers over powers of ten', () => {
  it.each<[string, readonly Content[], string]>([
    ['added', ['1.25', '2.5', '10'], '13.75'],
    ['added', ['10', '-10.00'], '0'],
    ['added', ['0.1', '0.2'], '0.3'],
    ['added', ['5'], '5'],
    ['added', [], '0'],
    ['added', ['1', undefined], 'absent'],
    ['added', ['900719925474099', '0.1'], '900719925474099.1'],
    ['added', ['900719925474099', '0.2'], '(900719925474099.2)'],
    ['added', ['999999999999999', '0.0000001'], '(999999999999999)'],
    ['subtracted', ['1.25', '2.5'], '-1.25'],
    ['subtracted', ['3', '3'], '0'],
    ['subtracted', ['3', undefined], 'absent'],
    ['subtracted', [undefined, '3'], 'absent'],
    ['subtracted', ['999999999999999', '0.0000001'], '(999999999999999)'],
    ['multiplied', ['1.5', '-0.5'], '-0.75'],
    ['multiplied', ['1.5', '0'], '0'],
    ['multiplied', ['0', undefined], 'absent'],
    ['multiplied', ['2', '3', '4'], '24'],
    ['multiplied', ['99999999', '100000001'], '(10000000000000000)'],
    ['multiplied', [[2, 0.001], '0'], '0'],
    ['divided', ['12', '4'], '3'],
    ['divided', ['1.2', '4'], '0.3'],
    ['divided', ['12', '0.4'], '30'],
    ['divided', ['-12', '0.4'], '-30'],
    ['divided', ['1', '4'], '(0.25)'],
    ['divided', ['1', '0'], 'to be worked out'],
    ['divided', ['1', undefined], 'absent'],
    ['divided', [undefined, '1'], 'absent'],
    ['divided', ['1', [1, 0.6]], 'to be worked out'],
    ['divided', ['1', [0, 0]], 'to be worked out'],
    ['divided', ['1', [2, 0.6]], '(0.5)'],
    ['divided', ['0', '7'], '0'],
  ])('%s %j is %s', (operation, contents, expected) => {
    expect(result(operation, ...contents)).toBe(expected);
  });

  it.each<[string, readonly Content[], string]>([
    ['added', [[1.5, 0.25], '2'], '(3.5)'],
    ['added', ['2', [1.5, 0.25]], '(3.5)'],
    ['added', [[1.5, 0.25], undefined], 'absent'],
    ['subtracted', [[1.5, 0.25], '2'], '(-0.5)'],
    ['subtracted', ['2', [1.5, 0.25]], '(0.5)'],
    ['multiplied', [[1.5, 0.25], '2'], '(3)'],
    ['multiplied', ['2', [1.5, 0.25]], '(3)'],
    [
      'multiplied',
      [
        [1.5, 0.25],
        [2, 0.5],
      ],
      '(3)',
    ],
    ['divided', [[1.5, 0.25], '2'], '(0.75)'],
  ])('%s of near ones %j is near: %s', (operation, contents, expected) => {
    expect(result(operation, ...contents)).toBe(expected);
  });
});

/** Errors that operands may have, and the one that an operation says its result has at most. */
describe('the error of a near result', () => {
  const errorOf = (operation: string, ...contents: readonly Content[]) => {
    const cells = cellsOf(...contents);
    OPERATIONS[operation]?.(cells, [...contents.keys()], OUT);
    return cells.errorOf(OUT);
  };
  // The worst that the operands allow: the ends of their ranges.
  it.each<[string, readonly Content[], number]>([
    [
      'added',
      [
        [100, 0.25],
        [10, 0.5],
      ],
      0.75,
    ],
    ['added', [[100, 0.25], '3'], 0.25],
    [
      'subtracted',
      [
        [100, 0.25],
        [10, 0.5],
      ],
      0.75,
    ],
    ['subtracted', ['3', [10, 0.5]], 0.5],
    [
      'multiplied',
      [
        [100, 0.25],
        [10, 0.5],
      ],
      10 * 0.25 + 100 * 0.5 + 0.25 * 0.5,
    ],
    ['multiplied', [[100, 0.25], '-2'], 0.5],
    ['multiplied', [[-100, 0.25], [-10, 0.5], '2'], 2 * (10 * 0.25 + 100 * 0.5 + 0.25 * 0.5)],
    [
      'divided',
      [
        [100, 0.25],
        [10, 0.5],
      ],
      100.25 / 9.5 - 10,
    ],
    ['divided', [[100, 0.25], '4'], 0.25 / 4],
    [
      'divided',
      [
        [-100, 0.25],
        [-10, 0.5],
      ],
      100.25 / 9.5 - 10,
    ],
  ])('%s %j is at most %d, and no more than a trifle above', (operation, contents, worst) => {
    const error = errorOf(operation, ...contents);
    expect(error).toBeGreaterThanOrEqual(worst);
    expect(error).toBeLessThanOrEqual(worst * (1 + 1e-12) + 1e-12);
  });
  it.each<[string, readonly Content[], string]>([
    ['divided', ['1', '3'], new Decimal(1).div(3).toString()],
    ['divided', ['2', '-0.7'], new Decimal(2).div(-0.7).toString()],
    ['multiplied', ['99999999.7', '99999999.9'], '9999999960000000.03'],
    ['added', ['999999999999999', '0.0000001'], '999999999999999.0000001'],
    ['subtracted', ['999999999999999', '0.0000001'], '999999999999998.9999999'],
  ])('%s %j takes in %s within a few units in the last place', (operation, contents, exact) => {
    const cells = cellsOf(...contents);
    OPERATIONS[operation]?.(cells, [...contents.keys()], OUT);
    const off = new Decimal(cells.near(OUT)).minus(exact).abs();
    const error = cells.errorOf(OUT);
    expect(off.lte(error)).toBe(true);
    expect(error).toBeGreaterThan(0);
    expect(error).toBeLessThan(Math.abs(Number(exact)) * 16 * DUST);
  });
  // The double of a sum, product or quotient of errors may lie below it: the room for rounding is above.
  it.each<[string, readonly Content[], (a: Decimal, b: Decimal) => Decimal]>([
    [
      'added',
      [
        [0, 0.1],
        [0, 0.7],
      ],
      (a, b) => a.plus(b),
    ],
    [
      'subtracted',
      [
        [0, 0.1],
        [0, 0.7],
      ],
      (a, b) => a.plus(b),
    ],
    [
      'multiplied',
      [
        [0, 0.1],
        [0, 0.7],
      ],
      (a, b) => a.times(b),
    ],
    ['divided', [[0, 0.1], '3'], a => a.div(3)],
    ['divided', [[0, 0.7], '3'], a => a.div(3)],
  ])('%s %j has room for its own rounding', (operation, contents, worst) => {
    const [a = 0, b = 0] = contents.map(content => (typeof content === 'object' ? content[1] : 0));
    expect(worst(new Decimal(a), new Decimal(b)).lte(errorOf(operation, ...contents))).toBe(true);
  });
  it('of an exact whole number is nothing, of one over a power of ten a unit in the last place', () => {
    const cells = cellsOf('7', '0.1', [3, 0.5], '-12.5');
    expect([0, 1, 2, 3].map(cell => cells.errorOf(cell))).toEqual([
      0,
      0.1 * DUST + TINY,
      0.5,
      12.5 * DUST + TINY,
    ]);
    expect([0, 1, 2, 3].map(cell => cells.near(cell))).toEqual([7, 0.1, 3, -12.5]);
  });
});

describe('how two cells compare', () => {
  const sign = (a: Content, b: Content) => {
    const apart = compared(cellsOf(a, b), 0, 1);
    return apart === undefined ? undefined : Math.sign(apart) + 0;
  };
  it.each<[Content, Content, number | undefined]>([
    ['1.5', '1.50', 0],
    ['1.5', '1.4999', 1],
    ['-2', '1', -1],
    ['0.1', [0.1, 0], undefined],
    ['1', [2, 0.5], -1],
    ['1', [2, 1], undefined],
    ['1', [2, 1.5], undefined],
    [[5, 1], [3, 0.5], 1],
    [[5, 1], [3, 1], undefined],
    ['999999999999999', '0.0000001', undefined],
  ])('%j and %j: %j', (a, b, expected) => expect(sign(a, b)).toBe(expected));
  it.each([
    [15, 1, 1, 0, 5],
    [1, 0, 15, 1, -5],
    [100, 2, 1, 0, 0],
    [MOST, 0, 1, 1, undefined],
    [1, 1, MOST, 0, undefined],
    [MOST, 0, MOST, 0, 0],
  ])('%d over 10^%d and %d over 10^%d: %j', (a, aDecimals, b, bDecimals, expected) => {
    expect(comparedWhole(a, aDecimals, b, bDecimals)).toBe(expected);
  });
});

describe('settling to decimals', () => {
  const told = (cells: Cells, isSettled: boolean) =>
    isSettled ? textOfWhole(cells.whole, cells.places) : undefined;
  it.each([
    [125, 2, 1, '1.3'],
    [-125, 2, 1, '-1.3'],
    [124, 2, 1, '1.2'],
    [-124, 2, 1, '-1.2'],
    [1250, 2, 1, '12.5'],
    [7, 0, 2, '7'],
    [700, 2, 2, '7'],
    [5, 1, 0, '1'],
    [4, 1, 0, '0'],
    [-4, 1, 0, '0'],
    [0, 3, 1, '0'],
    [MOST, 3, 0, '9007199254741'],
    [12_000, 3, 3, '12'],
  ])('%d over 10^%d to %d decimals is %s', (whole, decimals, digits, expected) => {
    const cells = new Cells(1);
    expect(told(cells, settledWhole(cells, whole, decimals, digits))).toBe(expected);
    expect(Object.is(cells.whole, -0)).toBe(false);
  });
  it('keeps no zeros behind', () => {
    const cells = new Cells(1);
    settledWhole(cells, 12_000, 3, 3);
    expect([cells.whole, cells.places]).toEqual([12, 0]);
    settledWhole(cells, 12_500, 3, 2);
    expect([cells.whole, cells.places]).toEqual([125, 1]);
  });
  it.each([
    [1.254, 0.0009, 1, '1.3'],
    [1.246, 0.0009, 1, '1.2'],
    [-1.254, 0.0009, 1, '-1.3'],
    [1.2501, 0.0009, 1, undefined],
    [1.2499, 0.0009, 1, undefined],
    [1.25, 0, 1, undefined],
    [0.04, 0, 1, '0'],
    [-0.04, 0, 1, '0'],
    [2 ** 51, 0, 0, undefined],
    [-(2 ** 51), 0, 0, undefined],
    [2 ** 50, 0, 0, '1125899906842624'],
    [2 ** 50, 0, 2, undefined],
    [NaN, 0, 0, undefined],
  ])('%d give or take %d to %d decimals is %j', (value, error, digits, expected) => {
    const cells = new Cells(1);
    expect(told(cells, settledNear(cells, value, error, digits))).toBe(expected);
  });
  it('of a cell is by what is known of it', () => {
    const cells = cellsOf('1.255', [1.254, 0.0009]);
    expect(told(cells, settled(cells, 0, 2))).toBe('1.26');
    expect(told(cells, settled(cells, 1, 1))).toBe('1.3');
  });
  it.each([
    [15, 1, 15, 1, 1, '2.3'],
    [15, 1, 15, 1, 2, '2.25'],
    [-15, 1, 15, 1, 1, '-2.3'],
    [0, 0, 15, 1, 1, '0'],
    [123_456_789_012, 2, 987_654_321, 3, 2, undefined],
    [123_456_789, 2, 987_654_321, 9, 2, '1219326.31'],
    // 6361 × 69431 and 20394401 are the greatest whole number of 53 bits.
    [441_650_591, 0, 20_394_401, 0, 0, '9007199254740991'],
    [441_650_591, 1, 20_394_401, 0, 0, '900719925474099'],
    [1, 12, 1, 12, 2, undefined],
    [123_456_789_012, 11, 987_654_321, 11, 2, '0.01'],
    [1, 11, 1, 11, 2, '0'],
  ])(
    'the product of %d over 10^%d and %d over 10^%d to %d decimals is %j',
    (a, aDecimals, b, bDecimals, digits, expected) => {
      const cells = new Cells(1);
      const product = settledProduct(
        cells,
        { whole: a, decimals: aDecimals },
        { whole: b, decimals: bDecimals },
        digits,
      );
      const exact = new Decimal(a).times(b).div(new Decimal(10).pow(aDecimals + bDecimals));
      const wanted =
        expected === undefined
          ? undefined
          : exact.toDecimalPlaces(digits, Decimal.ROUND_HALF_UP).plus(0).toFixed();
      if (expected !== undefined) expect(wanted).toBe(expected);
      expect(told(cells, product)).toBe(wanted);
    },
  );
  it.each([
    [7, 0, 7],
    [71, 1, 8],
    [70, 1, 7],
    [-71, 1, -7],
    [-70, 1, -7],
    [-9, 1, 0],
    [1, 3, 1],
    [1000, 3, 1],
    [1001, 3, 2],
    [2 ** 51, 1, 225_179_981_368_525],
    [2 ** 51, 0, 2 ** 51],
    [-(2 ** 52), 1, -450_359_962_737_049],
    [MOST, 1, 900_719_925_474_100],
    [MOST, 22, 1],
  ])('the next whole number up from %d over 10^%d is %j', (whole, places, expected) => {
    expect(wholeAbove(whole, places)).toBe(expected);
    expect(Object.is(wholeAbove(whole, places), -0)).toBe(false);
  });
});

it('whole numbers of 53 bits beside a multiple of a power of ten or of its half are settled as decimals are', () => {
  for (let places = 1; places <= 22; places++) {
    const by = tens(places);
    for (const near of [by, 2 ** 40 + 1, 2 ** 52, MOST - by / 2, MOST / 3, by / 2, by * 4.5, by * 2 ** 20])
      for (const apart of [-1, 0, 1, by / 2 - 1, by / 2, by / 2 + 1]) {
        const whole = Math.round(near / by) * by + apart;
        if (!Number.isInteger(whole) || Math.abs(whole) > MOST) continue;
        const exact = new Decimal(whole).div(new Decimal(10).pow(places));
        const cells = new Cells(1);
        settledWhole(cells, -whole, places, 0);
        expect([-cells.whole, wholeAbove(whole, places), wholeAbove(-whole, places)].map(x => x + 0)).toEqual(
          [exact.toDecimalPlaces(0, Decimal.ROUND_HALF_UP), exact.ceil(), exact.neg().ceil()].map(
            x => x.toNumber() + 0,
          ),
        );
      }
  }
});

describe('decimal text of a whole number over a power of ten', () => {
  it.each([
    [0, 0, '0'],
    [0, 5, '0'],
    [12, 0, '12'],
    [-12, 0, '-12'],
    [1250, 2, '12.5'],
    [-1250, 3, '-1.25'],
    [5, 3, '0.005'],
    [-5, 3, '-0.005'],
    [100, 2, '1'],
    [1, 22, '0.0000000000000000000001'],
  ])('%d over 10^%d is %s', (whole, decimals, text) => expect(textOfWhole(whole, decimals)).toBe(text));
  it.each([
    ['12', { whole: 12, decimals: 0 }],
    ['1200', { whole: 1200, decimals: 0 }],
    ['-12.50', { whole: -125, decimals: 1 }],
    ['0.005', { whole: 5, decimals: 3 }],
    ['12.00', { whole: 12, decimals: 0 }],
    ['-0', { whole: 0, decimals: 0 }],
    ['999999999999999', { whole: 999_999_999_999_999, decimals: 0 }],
    ['99999999999999.9', { whole: 999_999_999_999_999, decimals: 1 }],
    ['9999999999999999', undefined],
  ])('%s is read as %j', (text, expected) => {
    expect(wholeOfText(text)).toEqual(expected);
    expect(wholeOfText(text)).toEqual(expected);
    expect(isReadWhole(text)).toBe(expected !== undefined);
  });
  it('is not read before anybody asked', () => expect(isReadWhole('31415926.5')).toBe(false));
});

describe('cells', () => {
  it('are absent until something is put', () => {
    const cells = new Cells(2);
    expect([shown(cells, 0), cells.stateOf(7), cells.mantissaOf(7)]).toEqual(['absent', ABSENT, NaN]);
    expect([cells.putWhole(0, 5, 1), shown(cells, 0), cells.putAbsent(0), shown(cells, 0)]).toEqual([
      true,
      '0.5',
      true,
      'absent',
    ]);
  });
  it('take whole numbers of 53 bits with up to 22 decimals, and finite doubles', () => {
    const cells = new Cells(1);
    expect([
      cells.putWhole(0, MOST, 22),
      cells.putWhole(0, -MOST, 0),
      cells.putWhole(0, MOST + 1, 0),
      cells.putWhole(0, 1, 23),
      cells.putWhole(0, NaN, 0),
      cells.putNear(0, 1, Infinity),
      cells.putNear(0, NaN, 0),
      cells.putNear(0, 1, 0),
    ]).toEqual([true, true, false, false, false, false, false, true]);
  });
  it.each([
    ['1.25', '1.25'],
    ['0', '0'],
    ['-7', '-7'],
    ['123456789012345', '123456789012345'],
    ['1234567890123456', '(1234567890123456)'],
    ['0.1234567890123456', '(0.1234567890123456)'],
    ['1e-23', '(1e-23)'],
  ])('put the decimal %s as %s', (text, expected) => {
    const cells = new Cells(1);
    cells.putExact(0, new Exact(text));
    expect(shown(cells, 0)).toBe(expected);
    const isNear = expected.startsWith('(');
    expect(cells.exact.get(0)?.eq(text)).toBe(isNear ? true : undefined);
    if (isNear) expect(cells.errorOf(0)).toBe(Math.abs(Number(text)) * DUST + TINY);
    else expect(cells.exactWhole(0).eq(text)).toBe(true);
    cells.putExact(0, undefined);
    expect(shown(cells, 0)).toBe('absent');
  });
  it('are copied with their errors, one that does not exist as absent', () => {
    const cells = cellsOf('1.5', [3, 0.5]);
    for (const from of [0, 1]) {
      cells.copy(OUT, from);
      expect([shown(cells), cells.errorOf(OUT)]).toEqual([shown(cells, from), cells.errorOf(from)]);
    }
    cells.copy(OUT, -1);
    expect(shown(cells)).toBe('absent');
    cells.copy(OUT, 0, cellsOf('8'));
    expect(shown(cells)).toBe('8');
  });
  it('are taken over in runs', () => {
    const from = cellsOf('1', '2.5', [3, 0.5], undefined, '9');
    const cells = cellsOf('7', '7', '7', '7', '7', '7');
    cells.take(from, 1, 2, 3);
    expect([0, 1, 2, 3, 4, 5].map(cell => shown(cells, cell))).toEqual([
      '7',
      '7',
      '2.5',
      '(3)',
      'absent',
      '7',
    ]);
    expect(cells.errorOf(3)).toBe(0.5);
    const kept = cellsOf('7', '7', [3, 0.5], [4, 0.25], [5, 0.125]);
    kept.take(cellsOf('1', [6, 0.75]), 0, 1, 2);
    expect([0, 1, 2, 3, 4].map(cell => shown(kept, cell))).toEqual(['7', '1', '(6)', '(4)', '(5)']);
    expect([2, 3, 4].map(cell => kept.errorOf(cell))).toEqual([0.75, 0.25, 0.125]);
    const whole = new Cells(14);
    from.into(whole, 3);
    expect([2, 3, 4, 7].map(cell => shown(whole, cell))).toEqual(['absent', '1', '2.5', '9']);
  });
  it('are those of operands by their numbers, and none where there is no operand', () => {
    const cells = cellsOf('1', '2');
    expect([0, 1, 2].map(number => cells.stateOf(operandOf([1, 0], number)))).toEqual([0, 0, ABSENT]);
  });
  it('know powers of ten up to the 22nd', () => {
    expect([tens(0), tens(3), tens(22), tens(23), tens(-1)]).toEqual([1, 1000, 1e22, NaN, NaN]);
  });
});
