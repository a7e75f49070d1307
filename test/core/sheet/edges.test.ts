import { describe, expect, it } from 'vitest';
import * as op from '../../../core/sheet';
import {
  Sheet,
  SheetResult,
  evaluateSheet,
  placeApart,
  sheetFindings,
  why,
  type Given,
} from '../../../core/sheet';
import { Names } from '../../../core/sheet/formula/names';
import { patternOf } from '../../../core/sheet/formula/render';
import { atom } from '../../../core/sheet/formula/term';
import { innerOf } from '../../../core/sheet/inner';
import type { Cells } from '../../../core/sheet/quick/cells';
import { homeOf, inputOf, makeStep, textsOf } from '../../../core/sheet/step';
import { boundUnit, pricedUnit, productUnit, quotientUnit } from '../../../core/sheet/unit';
import { give } from './example';

const rows = (of: readonly string[]) => ({
  heading: 'Rows',
  of,
  key: (r: string) => r,
  title: (r: string) => `Row ${r}`,
});
const one = give('1', '1');

/** What is thrown when a sheet with one block is built so. */
function refusal(build: (b: op.Block, sheet: Sheet) => unknown): string {
  const sheet = new Sheet('s');
  try {
    build(sheet.block('b', 'Block'), sheet);
  } catch (cause) {
    return cause instanceof Error ? cause.message : 'no error';
  }
  return 'taken';
}

describe('units of products and quotients', () => {
  it.each([
    ['m', 'm', 'm2'],
    ['m2', 'm', 'm3'],
    ['m', 'm2', 'm3'],
    ['ft', 'ft', 'ft2'],
    ['ft', 'ft2', 'ft3'],
    ['kn', 'h', 'nmi'],
    ['h', 'kn', 'nmi'],
  ] as const)('%s times %s is %s', (a, b, product) => {
    expect(productUnit(a, b)).toBe(product);
    expect(quotientUnit(product, b)).toBe(a);
    expect(quotientUnit(product, a)).toBe(b);
  });

  it.each([
    ['m', '1', 'm'],
    ['USD/h', '1', 'USD/h'],
    ['h', 'h', '1'],
    ['USD/m2', 'USD/m2', '1'],
    ['USD', 'USD/h', 'h'],
    ['own', 'own/h', 'h'],
    ['USD', 'h', 'USD/h'],
    ['t', 'own', 't/own'],
  ] as const)('%s over %s is in %s', (a, b, unit) => expect(quotientUnit(a, b)).toBe(unit));

  it.each([
    [() => productUnit('m', 'h'), 'm times h has no unit of its own: use priced with a rate'],
    [() => productUnit('m', 'm3'), 'm times m3 has no unit of its own: use priced with a rate'],
    [() => quotientUnit('text', 'h'), 'text cannot be divided'],
    [() => quotientUnit('h', 'text'), 'text cannot be divided'],
    [() => quotientUnit('USD/h', 'm'), 'USD/h over m has no unit in the list'],
    [() => quotientUnit('m', 'USD/h'), 'm over USD/h has no unit in the list'],
    [() => pricedUnit('h', 'text'), 'text is not a rate'],
    [() => pricedUnit('h', 'USD'), 'USD is not a rate for h'],
    [() => pricedUnit('h', 'USD/m'), 'USD/m is not a rate for h'],
  ])('%s is refused in words', (act, words) => {
    expect(act).toThrow(words);
    expect(pricedUnit('h', 'USD/h')).toBe('USD');
  });

  it.each([
    ['own', 'm2', 'm2'],
    ['USD/own', 'm2', 'USD/m2'],
    ['own/h', 'm2', 'm2/h'],
    ['USD/h', 'm2', 'USD/h'],
    ['own', undefined, 'own'],
  ] as const)('%s in a row of %s is %s', (unit, own, bound) => expect(boundUnit(unit, own)).toBe(bound));
});

describe('a mistake in a recipe is told in words', () => {
  const table = (sheet: Sheet, entries: readonly op.LookUpEntry[]) =>
    sheet.lookUpTable('t', { title: 'T', keyUnit: '1', unit: '1', entries });
  const entry = (key: string, given: Given = one): op.LookUpEntry => ({ key, title: key, given });

  it.each<[string, (b: op.Block, sheet: Sheet) => unknown]>([
    ['"A" cannot be the id of a table or block', (_, sheet) => sheet.block('A', 'A')],
    ['"a_b" cannot be the id of a table or block', (_, sheet) => sheet.table('a_b', rows([]), () => 0)],
    ['"a-" cannot be the id of a table or block', (_, sheet) => sheet.block('a-', 'A')],
    ['"-a" cannot be the id of a table or block', (_, sheet) => sheet.block('-a', 'A')],
    ['two tables or blocks have the id b', (_, sheet) => sheet.block('b', 'Again')],
    ['taken', (_, sheet) => sheet.block('a-1-B', 'A')],
    ['b: "X" cannot be a column key', b => b.given('X', 'X', 'h', undefined)],
    ['b/x is placed without a title', b => b.given('x', '', 'h', undefined)],
    [
      'b/x is placed twice',
      b => {
        b.given('x', 'X', 'h', undefined);
        b.given('x', 'X', 'h', undefined);
      },
    ],
    ['b/y is already placed as x', b => b.place('y', 'Y', b.given('x', 'X', 'h', undefined))],
    [
      'b/x: "F" stands in rows of t; total or fetch it',
      (b, sheet) => {
        const { columns } = sheet.table('t', rows(['a']), t => t.field('f', 'F', 'h', () => undefined));
        b.place('x', 'X', columns);
      },
    ],
    [
      'o/x belongs to another sheet: carry it over',
      b =>
        b.place('y', 'Y', op.scaled(op.sum(new Sheet('o').block('o', 'O').given('x', 'X', 'h', undefined)))),
    ],
    ['t: "1e5" cannot be a row key', (_, sheet) => sheet.table('t', rows(['1e5']), () => 0)],
    ['t: two rows have the key "A"', (_, sheet) => sheet.table('t', rows(['a', 'A']), () => 0)],
    ['taken', (_, sheet) => sheet.table('t', rows(['a.b:c-d_1', 'Z']), () => 0)],
    [
      't: the column f is placed twice',
      (_, sheet) =>
        sheet.table('t', rows(['a']), t => {
          t.field('f', 'F', 'h', () => undefined);
          t.field('f', 'F', 'h', () => undefined);
        }),
    ],
    [
      't/x: the step stands in rows of one',
      (_, sheet) => {
        const other = sheet.table('one', rows(['a']), t => t.field('f', 'F', 'h', () => undefined));
        sheet.table('t', rows(['a']), t => t.place('x', 'X', op.scaled(other.columns)));
      },
    ],
    [
      'sum: steps of one and t meet; use link, total or totalWhere between tables',
      (_, sheet) => {
        const other = sheet.table('one', rows(['a']), t => t.field('f', 'F', 'h', () => undefined));
        sheet.table('t', rows(['a']), t =>
          t.place(
            'x',
            'X',
            op.sum(
              other.columns,
              t.field('g', 'G', 'h', () => undefined),
            ),
          ),
        );
      },
    ],
    ['t: key "1e3" is not a plain number', (_, sheet) => table(sheet, [entry('1e3')])],
    ['t: keys must ascend, but 2 comes before 1', (_, sheet) => table(sheet, [entry('2'), entry('1')])],
    ['t: keys must ascend, but 1 comes before 1.0', (_, sheet) => table(sheet, [entry('1'), entry('1.0')])],
    ['t: entry 1 is in h, not in 1', (_, sheet) => table(sheet, [entry('1', give('1', 'h'))])],
    ['taken', (_, sheet) => table(sheet, [entry('-1'), entry('0'), entry('0.5')])],
    [
      'two tables or blocks have the id b',
      (_, sheet) => sheet.lookUpTable('b', { title: 'T', keyUnit: '1', unit: '1', entries: [] }),
    ],
  ])('%s', (words, build) => expect(refusal(build)).toBe(words));

  it('a sheet carries on without meeting the ids of the one before', () => {
    const before = new Sheet('before');
    before.block('b', 'Block');
    expect(() => new Sheet('after', before).block('b', 'Block')).toThrow(
      'two tables or blocks have the id b',
    );
    expect(new Sheet('apart').block('b', 'Block').id).toBe('b');
  });
});

describe('a figure is asked for', () => {
  const sheet = new Sheet('s');
  const block = sheet.block('b', 'Block');
  const cost = block.given('cost', 'Cost', 'USD', give('12.34', 'USD'));
  const hours = block.given('hours', 'Hours', 'h', give('3', 'h'));
  const { columns } = sheet.table('t', { ...rows(['a', 'z']), own: () => 'm2' as const }, t => ({
    size: t.field('size', 'Size', 'own', r => (r === 'a' ? give('5', 'm2') : undefined)),
    stage: t.key('stage', 'Stage', r => `stage of ${r}`),
  }));
  const result = evaluateSheet(sheet);

  it('by its id, with title, row, unit and value', () => {
    expect(result.figure('t/a/size')).toEqual({
      id: 't/a/size',
      title: 'Size',
      rowTitle: 'Row a',
      unit: 'm2',
      text: '5',
      number: 5,
    });
    expect(result.figure('b/cost')).toEqual({
      id: 'b/cost',
      title: 'Cost',
      rowTitle: undefined,
      unit: 'USD',
      text: '12.34',
      number: 12.34,
    });
    expect(result.at(columns.size, 'z').text).toBeUndefined();
    expect(result.figure('t/a/stage')).toMatchObject({ text: 'stage of a', number: undefined });
    expect(result.key(columns.stage, 'z')).toBe('stage of z');
    expect(result.key(columns.stage, 'nobody')).toBeUndefined();
  });

  it.each(['b/nothing', 'nowhere/cost', 't/a', 't/a/nothing', 't/x/size', 'b/cost/size', 'b', ''])(
    'that is not there: %s',
    id => {
      expect(result.has(id)).toBe(false);
      expect(() => result.figure(id)).toThrow(`there is no figure ${id}`);
      expect(() => result.cellOf(id)).toThrow(`there is no figure ${id}`);
      expect(() => why(result, id)).toThrow(`there is no figure ${id}`);
    },
  );

  it('as a number, a column and money', () => {
    expect(result.number(columns.size, 'a')).toBe(5);
    expect(result.number(columns.size, 'z')).toBeUndefined();
    expect(() => result.number(columns.size, 'x')).toThrow('there is no figure t/x/size');
    expect(() => result.number(columns.size)).toThrow('t/size needs a row key');
    expect(result.numbers(columns.size)).toEqual([5, undefined]);
    expect(result.column(columns.size).map(figure => figure.id)).toEqual(['t/a/size', 't/z/size']);
    expect(result.column(hours)).toHaveLength(1);
    expect(result.money(cost)?.cents).toBe(1234);
    expect(() => result.money(hours)).toThrow('b/hours is in h, not money');
    expect(() => result.money(columns.size, 'x')).toThrow('there is no figure t/x/size');
    expect(() => result.at(op.sum(hours, hours))).toThrow('sum is not placed and has no id');
  });
});

describe('what only a mistake of the program asks for is refused in words', () => {
  const sheet = new Sheet('s');
  const b = sheet.block('b', 'Block');
  const x = b.given('x', 'X', '1', one);
  const { columns } = sheet.table('t', rows(['a']), t => {
    const field = t.field('f', 'F', '1', () => one);
    return { field, running: t.place('r', 'R', op.runningThrough(field)), key: t.key('k', 'K', r => r) };
  });
  const result = evaluateSheet(sheet);
  const nothing = { operation: 'nothing', exact: () => undefined, live: () => () => undefined };
  const described = { formula: () => atom(''), words: () => '' };
  const names = new Names([result], placeApart([result]), '');

  it.each<[string, () => unknown]>([
    ['cell -1 is not a cell of the sheet', () => innerOf(result).order.at(-1)],
    ['sum has no input 3', () => inputOf(op.sum(x, x), 2)],
    ['"X" is no text', () => textsOf(x)],
    ['sum is not placed and has no id', () => homeOf(op.sum(x, x))],
    ['this result was not made by evaluateSheet', () => innerOf(new SheetResult(sheet))],
    ['a leaf of the sheet is given, not calculated', () => x.kind.live([], new Float64Array(1))],
    ['a leaf of the sheet is given, not calculated', () => patternOf(x, names)],
    [
      '"F" is no column of the table in hand',
      () => patternOf({ ...columns.running, scope: undefined }, names),
    ],
    [
      'a carried figure is given by the sheet before, not calculated',
      () => op.carriedSingle(result, x).kind.live([], new Float64Array(1)),
    ],
    [
      '"X" carries no figure',
      () =>
        patternOf(
          { ...x, kind: { ...nothing, ...described, formula: op.carriedSingle(result, x).kind.formula } },
          names,
        ),
    ],
    [
      'the workbook has no range t_g',
      () => names.column({ ...x, home: { ...homeOf(x), id: 't', key: 'g' } }),
    ],
    ['t has no place in the workbook', () => new Names([result], new Map(), '')],
    [
      'cell 0 has a near value and no exact one',
      () => {
        const other = new Sheet('o');
        const near = { ...nothing, ...described, quick: (cells: Cells) => cells.putNear(0, 1, 1) };
        other.block('c', 'C').place('y', 'Y', makeStep('1', near, [], 0));
        return evaluateSheet(other).figure('c/y');
      },
    ],
  ])('%s', (words, act) => expect(act).toThrow(words));

  it('and a text is no number, a number no text', () => {
    expect(result.key(columns.field, 'a')).toBeUndefined();
    expect(result.number(columns.key, 'a')).toBeUndefined();
  });
});

describe('why a figure is absent', () => {
  it('is told with its place, what it means and what to do', () => {
    const sheet = new Sheet('s');
    const b = sheet.block('b', 'Block');
    const zero = b.given('zero', 'Zero', '1', give('0', '1'));
    const nothing = b.given('share', 'Share', '1', undefined);
    const { columns } = sheet.table(
      't',
      { ...rows(['a']), own: () => 'm2' as const, place: () => '/rows/0' },
      t => t.field('rate', 'Rate', 'USD/own', () => undefined),
    );
    const each = sheet.table('u', rows(['a']), t =>
      t.field('fee', 'Fee', 'USD/1', () => ({ ...one, value: 'x', unit: 'USD/1' })),
    );
    b.place('quotient', 'Quotient', op.rounded(op.over(nothing, zero), 2));
    b.place('bare', 'Bare', op.rounded(op.over(op.sum(zero, zero), zero), 2));
    b.place('rates', 'Rates', op.countKnown(columns));
    sheet.table('v', rows(['a']), t =>
      t.place(
        'x',
        'X',
        op.scaled(
          op.link(
            t.key('k', 'K', r => r),
            each.columns,
          ),
        ),
      ),
    );
    const findings = sheetFindings(evaluateSheet(sheet));
    expect(findings).toContainEqual({
      code: 'sheet/not-given',
      weight: 'blocks',
      place: 'b/share',
      message: 'Share: it is not given.',
      meaning: 'Every figure that depends on it is absent.',
      remedy: 'Give a value.',
    });
    expect(findings).toContainEqual({
      code: 'sheet/not-given',
      weight: 'blocks',
      place: 'u/a',
      message: 'Fee of Row a: it is not a plain number.',
      meaning: 'Every figure that depends on it is absent.',
      remedy: 'Give a value in USD each.',
    });
    expect(findings.filter(({ code }) => code === 'sheet/not-calculable')).toEqual([
      {
        code: 'sheet/not-calculable',
        weight: 'blocks',
        place: 'b/bare',
        message: 'a step ÷ Zero: the division is by zero.',
        meaning: 'Every figure that depends on it is absent.',
        remedy: 'Correct the values it is calculated from.',
      },
    ]);
    expect(findings).toHaveLength(3);
    expect(sheetFindings(evaluateSheet(sheet), ['t/a/rate'])).toMatchObject([
      { place: '/rows/0', message: 'Rate of Row a: it is not given.', remedy: 'Give a value in USD/m2.' },
    ]);
    expect(sheetFindings(evaluateSheet(sheet), [])).toEqual([]);
  });
});

describe('why a figure is what it is', () => {
  const sheet = new Sheet('s');
  const b = sheet.block('b', 'Block');
  const table = sheet.lookUpTable('index', {
    title: 'Index',
    keyUnit: 'month',
    unit: '1',
    entries: ['1', '2'].map(key => ({ key, title: `Month ${key}`, given: give(`1.${key}`, '1') })),
  });
  const hours = b.given('hours', 'Hours', 'h', {
    value: '3',
    unit: 'h',
    basis: 'quoted',
    source: 'Letter',
    year: 2026,
    low: '2',
    high: '5',
    typed: '180 min',
  });
  const rate = b.given('rate', 'Rate', 'USD/h', give('10.005', 'USD/h'));
  const month = b.given('month', 'Month', 'month', give('1', 'month'));
  b.place('cost', 'Cost', op.dollars(op.priced(hours, rate, op.lookUp(table, month, 0, 'absent'))));
  b.place('nothing', 'Nothing', op.sum(op.none('h'), hours));
  const { steps } = why(evaluateSheet(sheet), 'b/cost');

  it('is told step by step, each once, the figure first', () => {
    expect([...steps.keys()]).toEqual([
      'b/cost',
      'b/cost.1',
      'b/hours',
      'b/rate',
      'b/cost.1.3',
      'index/1',
      'b/month',
    ]);
    expect(steps.get('b/cost')).toEqual({
      id: 'b/cost',
      title: 'Cost',
      value: '33.02',
      unit: 'USD',
      operation: 'dollars',
      settings: { digits: 2 },
      words: expect.stringContaining('rounded to the cent') as string,
      inputs: ['b/cost.1'],
    });
    expect(steps.get('b/cost.1')).toMatchObject({
      value: '33.0165',
      unit: 'USD',
      operation: 'product',
      inputs: ['b/hours', 'b/rate', 'b/cost.1.3'],
    });
    expect(steps.get('b/cost.1')?.title).toBe(steps.get('b/cost.1')?.words);
    expect(steps.get('b/cost.1')?.words).toMatch(/^Hours × Rate × /);
  });

  it('down to the givens with all that is known of them', () => {
    expect(steps.get('b/hours')).toEqual({
      id: 'b/hours',
      title: 'Hours',
      value: '3',
      unit: 'h',
      operation: 'given',
      settings: {},
      words: 'given',
      inputs: [],
      given: {
        basis: 'quoted',
        source: 'Letter',
        year: 2026,
        low: '2',
        high: '5',
        typed: '180 min',
      },
    });
  });

  it('with the entry of a table that was used, and the one after it', () => {
    expect(steps.get('b/cost.1.3')).toMatchObject({
      value: '1.1',
      settings: { entryKey: '1', nextKey: '2' },
      inputs: ['b/month', 'index/1'],
    });
    expect(steps.get('index/1')).toMatchObject({
      id: 'index/1',
      title: 'Index: Month 1',
      value: '1.1',
      unit: '1',
      operation: 'given',
      settings: {},
      words: 'given',
      inputs: [],
    });
  });

  it('a constant is so by definition', () => {
    const told = why(evaluateSheet(sheet), 'b/nothing').steps;
    expect([...told.values()].find(step => step.operation === 'constant')).toMatchObject({
      id: 'b/nothing.1',
      value: '0',
      inputs: [],
      given: { basis: 'published', source: 'by definition' },
    });
    expect(told.get('b/nothing')).not.toHaveProperty('given');
  });
});
