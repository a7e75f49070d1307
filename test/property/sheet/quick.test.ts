import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as op from '../../../core/sheet';
import {
  Sheet,
  evaluateSheet,
  type Given,
  type SheetResult,
  type SheetUnit,
  type Step,
} from '../../../core/sheet';
import type { Value } from '../../../core/sheet/decimal';
import { innerOf } from '../../../core/sheet/inner';
import { NEAR } from '../../../core/sheet/quick/cells';
import { exampleItems, exampleSheet } from '../../core/sheet/example';
import { randomPair } from '../../core/sheet/random-sheet';
import { inPlainDecimals } from './plain-decimals';

/** The cells whose value, text or double is not that of plain decimals, or whose double strays beyond its error. */
function different(result: SheetResult, plain: readonly Value[]): string[] {
  const inner = innerOf(result);
  return plain.flatMap((value, cell) => {
    const strays =
      value !== undefined &&
      inner.cells.stateOf(cell) === NEAR &&
      value.minus(inner.cells.near(cell)).abs().gt(inner.cells.errorOf(cell));
    const number = value === undefined ? undefined : value.toNumber() + 0;
    const isSame =
      inner.text(cell) === value?.toFixed() &&
      Object.is(inner.number(cell), number) &&
      !strays &&
      (value === undefined ? inner.value(cell) === undefined : inner.value(cell)?.eq(value) === true);
    const at = inner.order.at(cell);
    return isSame
      ? []
      : [
          `${at.step.home?.key ?? at.step.kind.operation} row ${at.row}: ${inner.text(cell) ?? 'absent'}, not ${value?.toFixed() ?? 'absent'}`,
        ];
  });
}

describe('the quick evaluation of a sheet', () => {
  it('gives what decimals of 34 digits give, in every cell of random sheets of every kind of step', () => {
    for (let seed = 1; seed <= 400; seed++) {
      const pair = randomPair(seed);
      const work = inPlainDecimals(pair.work);
      expect(different(pair.work, work), `work sheet, seed ${seed}`).toEqual([]);
      expect(different(pair.money, inPlainDecimals(pair.money, work)), `money sheet, seed ${seed}`).toEqual(
        [],
      );
    }
  });

  it('gives what decimals give in three hundred lines', () => {
    const result = evaluateSheet(exampleSheet(exampleItems(300), true).sheet);
    expect(different(result, inPlainDecimals(result))).toEqual([]);
  });

  const given = (value: string, unit: Given['unit'] = '1'): Given => ({
    value,
    unit,
    basis: 'judgement',
    source: 'drawn at random',
  });
  /** Whole numbers over powers of ten: half cents, dust behind them, great and small ones, up to 30 digits. */
  const number = fc.oneof(
    fc.integer({ min: -2_000_000, max: 2_000_000 }).map(k => (k / 2 / 100).toFixed(3)),
    fc
      .integer({ min: -99_999, max: 99_999 })
      .map(k => `${k < 0 ? '-' : ''}0.${String(Math.abs(k)).padStart(7, '0')}5`),
    fc.integer({ min: -9, max: 9 }).map(String),
    fc
      .tuple(fc.bigInt({ min: -(10n ** 17n), max: 10n ** 17n }), fc.nat({ max: 12 }))
      .map(([k, d]) => decimalText(k, d)),
    fc.integer({ min: 0, max: 40_000 }).map(k => `${k}.00499999999999999999999`),
    fc.integer({ min: 0, max: 40_000 }).map(k => `${k}.0050000000000000000001`),
    fc.constantFrom('0', '1', '0.1', '3', '0.005', '9007199254740993', '0.0000000000000000000001'),
  );

  it('takes no rounding, jump or comparison that the decimals do not take, near half cents least of all', () => {
    fc.assert(
      fc.property(
        fc.array(number, { minLength: 4, maxLength: 4 }),
        fc.nat({ max: 6 }),
        ([a = '1', b = '1', c = '1', d = '1'], digits) => {
          const sheet = new Sheet('hard');
          const block = sheet.block('x', 'Numbers');
          const single = (key: string, value: string) => block.given(key, key, '1', given(value));
          const [p, q, r, s] = [single('p', a), single('q', b), single('r', c), single('s', d)];
          const usd = block.given('usd', 'Dollars', 'USD', given(a, 'USD'));
          const forms: Step<SheetUnit>[] = [
            op.rounded(op.scaled(p, q), digits),
            op.rounded(op.scaled(p, q, r, s), digits),
            op.rounded(op.over(p, q), digits),
            op.rounded(op.over(op.scaled(p, q), q), digits),
            op.rounded(op.scaled(op.over(p, q), r), digits),
            op.rounded(op.sum(op.scaled(p, q), op.scaled(r, s), p), digits),
            op.rounded(op.difference(op.scaled(p, q), op.scaled(q, p)), digits),
            op.rounded(op.difference(op.sum(p, q), op.sum(q, r)), digits),
            op.wholeUp(op.over(op.over(op.scaled(p, q), q), r), digits),
            op.wholeUp(op.scaled(p, q), digits),
            op.atLeast(op.over(op.scaled(p, r), r), p, digits),
            op.atLeast(op.scaled(p, q), op.scaled(r, s), digits),
            op.minimum(op.scaled(p, q), op.over(p, r), s),
            op.maximum(op.scaled(p, q), op.scaled(q, p), op.over(r, s)),
            op.when(op.atLeast(p, q, digits), op.over(p, r), op.scaled(p, s)),
            op.rounded(op.power(p, q), digits),
            op.dollars(op.scaled(usd, q, r)),
            op.grossedUp(usd, r, digits),
            op.share(usd, op.over(q, r), op.over(r, s), 10),
          ];
          forms.forEach((form, i) => block.place(`f${i}`, `Form ${i}`, form));
          const result = evaluateSheet(sheet);
          expect(different(result, inPlainDecimals(result))).toEqual([]);
        },
      ),
      { numRuns: 4000 },
    );
  });
});

function decimalText(whole: bigint, decimals: number): string {
  const sign = whole < 0n ? '-' : '';
  const digits = String(whole < 0n ? -whole : whole).padStart(decimals + 1, '0');
  const cut = digits.length - decimals;
  return decimals === 0 ? sign + digits : `${sign}${digits.slice(0, cut)}.${digits.slice(cut)}`;
}
