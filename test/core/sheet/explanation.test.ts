import { describe, expect, it } from 'vitest';
import type { Basis, Figure } from '../../../core/base';
import * as op from '../../../core/sheet';
import {
  Sheet,
  bareGiven,
  basisReader,
  evaluateSheet,
  givenFrom,
  notApplying,
  sheetFindings,
  why,
  whyTree,
  type Given,
  type Step,
} from '../../../core/sheet';
import { give } from './example';

const based = (value: string, basis: Given['basis'], more: Partial<Given> = {}): Given => ({
  ...give(value, '1'),
  basis,
  ...more,
});

/** The weakest basis behind a step made from single values, each with a basis of its own. */
function weakest(make: (s: ReturnType<typeof stage>) => Step<op.SheetUnit>): Basis | undefined {
  const s = stage();
  s.b.place('f', 'F', make(s));
  return basisReader(evaluateSheet(s.sheet))('b/f');
}
function stage() {
  const before = new Sheet('before');
  const earlier = before.block('e', 'E').given('e', 'E', '1', based('2', 'from memory'));
  const done = evaluateSheet(before);
  const sheet = new Sheet('s', before);
  const b = sheet.block('b', 'B');
  const single = (key: string, given: Given | undefined) => b.given(key, key, '1', given);
  const entries = [
    { key: '1', title: 'One', given: based('5', 'from memory') },
    { key: '2', title: 'Two', given: based('6', 'quoted') },
    { key: '3', title: 'Three', given: based('7', 'schedule') },
  ];
  const table = sheet.lookUpTable('t', { title: 'T', keyUnit: '1', unit: '1', entries });
  const rows = { heading: 'R', of: ['a', 'c'], key: (r: string) => r, title: (r: string) => r };
  const { columns } = sheet.table('r', rows, t => ({
    key: t.key('k', 'K', r => r),
    parts: t.field('parts', 'Parts', '1', r =>
      based(r === 'a' ? '3' : '0', r === 'a' ? 'published' : 'from memory'),
    ),
  }));
  return {
    ...{ sheet, b, done, earlier, table, ...columns },
    quoted: single('quoted', based('3', 'quoted')),
    published: single('published', based('4', 'published')),
    judged: single('judged', based('5', 'judgement')),
    one: single('one', based('1', 'from memory')),
    nothing: single('nothing', based('0', 'from memory')),
    neutral: single('neutral', notApplying('1', '1')),
    scheduled: single('scheduled', based('2', 'schedule')),
    two: single('two', based('2', 'quoted')),
    gone: single('gone', undefined),
  };
}

/** A third of one, and so many thirds less one: one, to 34 digits, where these are three. */
function thirds(one: Step<'1'>, count: number): Step<'1'> {
  const three = op.sum(op.unity('1'), op.unity('1'), op.unity('1'));
  const parts = op.sum(op.unity('1'), count === 3 ? op.unity('1') : op.none('1'));
  return op.sum(op.over(one, three), op.over(parts, three));
}

describe('the weakest basis behind a figure', () => {
  it.each<[Basis | undefined, string, Parameters<typeof weakest>[0]]>([
    ['quoted', 'a sum of one quote', s => op.sum(s.quoted)],
    ['published', 'a quote and a published rate', s => op.scaled(s.quoted, s.published)],
    ['judgement', 'whatever their order', s => op.sum(s.judged, s.quoted, s.published)],
    [
      'judgement',
      'through steps that are not placed',
      s => op.rounded(op.over(s.quoted, op.sum(s.judged, s.quoted)), 2),
    ],
    ['quoted', 'but for a factor of one', s => op.scaled(s.quoted, s.one)],
    ['quoted', 'but for a factor that is one by a detour', s => op.scaled(s.quoted, thirds(s.one, 3))],
    ['from memory', 'a factor that is nearly one counts', s => op.scaled(s.quoted, thirds(s.one, 2))],
    ['from memory', 'a one that is added counts', s => op.sum(s.quoted, s.one)],
    ['quoted', 'but for a term of nothing', s => op.sum(s.quoted, s.nothing)],
    ['from memory', 'a factor of nothing counts', s => op.scaled(s.quoted, s.nothing)],
    ['from memory', 'a one that is taken off counts', s => op.difference(s.quoted, s.one)],
    ['quoted', 'but for what does not apply', s => op.sum(s.quoted, s.neutral)],
    ['quoted', 'but for what the schedule gave', s => op.sum(s.quoted, s.scheduled)],
    [undefined, 'of what the schedule gave alone', s => op.sum(s.scheduled, s.neutral)],
    [undefined, 'of a constant', () => op.sum(op.none('1'), op.unity('1'))],
    ['quoted', 'the branch that was taken, not the other', s => op.when(op.unity('1'), s.quoted, s.judged)],
    ['judgement', 'the other branch', s => op.when(op.none('1'), s.quoted, s.judged)],
    ['quoted', 'the quote and not what stands behind it', s => op.quoted(s.quoted, s.judged)],
    ['judgement', 'what stands behind a quote that is not there', s => op.quoted(s.gone, s.judged)],
    ['from memory', 'the entry of a table and its key', s => op.lookUp(s.table, op.unity('1'), 0, 'absent')],
    ['quoted', 'another entry', s => op.lookUp(s.table, s.two, 0, 'absent')],
    [
      undefined,
      'an entry of the schedule',
      s => op.lookUp(s.table, op.sum(op.unity('1'), op.unity('1'), op.unity('1')), 0, 'absent'),
    ],
    ['published', 'a total, but for rows of nothing', s => op.total(s.parts)],
    ['from memory', 'a figure of a sheet before', s => op.carriedSingle(s.done, s.earlier)],
  ])('%s: %s', (basis, _words, make) => expect(weakest(make)).toBe(basis));

  it('is that of a given itself, and remembered', () => {
    const s = stage();
    const read = basisReader(evaluateSheet(s.sheet));
    expect(['b/quoted', 'b/judged', 'b/quoted', 'b/neutral', 'b/gone'].map(read)).toEqual([
      'quoted',
      'judgement',
      'quoted',
      undefined,
      undefined,
    ]);
    expect(() => read('b/none')).toThrow('there is no figure b/none');
  });
});

describe('an explanation as a tree', () => {
  const treeOf = () => {
    const sheet = new Sheet('s');
    const b = sheet.block('b', 'B');
    const hours = b.given('hours', 'Hours', 'h', {
      ...give('3', 'h'),
      year: 2026,
      low: '2',
      high: '5',
      typed: '180 min',
    });
    const gone = b.given('gone', 'Gone', 'h', undefined);
    b.place('f', 'F', op.rounded(op.sum(hours, hours, gone), 1));
    return whyTree(why(evaluateSheet(sheet), 'b/f'));
  };
  it('expands each step once, with its settings and where its givens come from', () => {
    const given = {
      basis: 'judgement',
      source: expect.any(String) as string,
      year: 2026,
      low: '2',
      high: '5',
      typed: '180 min',
    };
    const hours = { id: 'b/hours', title: 'Hours', value: 3, unit: 'h' };
    expect(treeOf()).toEqual({
      ...{ id: 'b/f', title: 'F', value: null, unit: 'h', operation: 'rounded', settings: { digits: 1 } },
      words: 'Hours + Hours + Gone, rounded to 1 decimals',
      inputs: [
        {
          ...{ id: 'b/f.1', title: 'Hours + Hours + Gone', value: null, unit: 'h', operation: 'sum' },
          words: 'Hours + Hours + Gone',
          inputs: [
            { ...hours, operation: 'given', words: 'given', ...given, inputs: [] },
            { ...hours, seen: true },
            {
              id: 'b/gone',
              title: 'Gone',
              value: null,
              unit: 'h',
              operation: 'given',
              words: 'given',
              inputs: [],
            },
          ],
        },
      ],
    });
  });
  it('names a step that it does not have', () => {
    expect(whyTree({ root: 'x', steps: new Map() })).toEqual({
      id: 'x',
      title: 'x',
      value: null,
      unit: '1',
      seen: true,
    });
  });
});

// NIST SP 811: 1 ft = 0.3048 m, 1 long ton = 1016.0469088 kg.
describe('a figure as a given', () => {
  // Another object every time: what was made of a figure is kept with it.
  const fresh = (change: Partial<Figure> = {}): Figure => ({
    ...{ value: '100', unit: 'ft', basis: 'quoted', source: 'Letter', low: '90', high: '120', year: 2026 },
    ...change,
  });
  it('is in the unit that is calculated in, with what was typed beside it', () => {
    expect(givenFrom(fresh(), 'm', '/vessel/length')).toStrictEqual({
      ...{
        value: '30.48',
        unit: 'm',
        basis: 'quoted',
        source: 'Letter',
        year: 2026,
        low: '27.432',
        high: '36.576',
      },
      ...{ typed: '100 ft', place: '/vessel/length' },
    });
  });
  it('in its own unit has nothing typed beside it', () => {
    const { low: _low, high: _high, year: _year, ...plain } = fresh();
    expect(givenFrom(plain, 'ft')).toStrictEqual({
      value: '100',
      unit: 'ft',
      basis: 'quoted',
      source: 'Letter',
    });
  });
  it('is absent in a unit that does not measure the same, or is none', () => {
    expect(givenFrom(fresh(), 'h')).toMatchObject({ value: undefined, unit: 'h', typed: '100 ft' });
    expect(givenFrom(fresh(), 'h')).not.toHaveProperty('low');
    expect(givenFrom(fresh({ unit: 'furlongs' }), 'm').value).toBeUndefined();
  });
  it('as a plain number keeps its value', () => {
    expect(bareGiven(fresh(), '/x')).toStrictEqual({
      ...{ value: '100', unit: '1', basis: 'quoted', source: 'Letter', year: 2026, low: '90', high: '120' },
      ...{ typed: '100 ft', place: '/x' },
    });
    expect(bareGiven(fresh({ unit: 'furlongs' })).value).toBe('100');
  });
  it('is made once for each unit and place', () => {
    const figure = fresh();
    expect(givenFrom(figure, 'm', '/a')).toBe(givenFrom(figure, 'm', '/a'));
    expect(givenFrom(figure, 'm', '/a')).not.toBe(givenFrom(figure, 'm', '/b'));
    expect(givenFrom(figure, 'm', '/a')).not.toBe(givenFrom(figure, 'ft', '/a'));
    expect(bareGiven(figure)).toBe(bareGiven(figure));
    expect(bareGiven(figure)).not.toBe(givenFrom(figure, '1'));
  });
  it('that does not apply is nothing or one, once', () => {
    expect(notApplying('0', 'USD')).toEqual({
      ...{ value: '0', unit: 'USD', basis: 'common practice', source: 'does not apply here', neutral: true },
    });
    expect(notApplying('0', 'USD')).toBe(notApplying('0', 'USD'));
    expect(notApplying('1', 'USD').value).toBe('1');
    expect(notApplying('0', 'h').unit).toBe('h');
  });
});

describe('a total by key is explained by the rows that count', () => {
  const sheetOf = (whens: readonly (string | undefined)[]) => {
    const sheet = new Sheet('s');
    const rows = {
      heading: 'R',
      of: whens.map((_, i) => `r${i}`),
      key: (r: string) => r,
      title: (r: string) => r,
    };
    const { columns } = sheet.table('r', rows, t => ({
      amount: t.field('amount', 'Amount', 'USD', r => give(`1${r.slice(1)}`, 'USD')),
      when: t.field('when', 'When', 'month', r => give(whens[Number(r.slice(1))], 'month')),
    }));
    const months = { heading: 'M', of: ['m1', 'm2'], key: (r: string) => r, title: (r: string) => r };
    sheet.table('m', months, t => {
      const month = t.field('month', 'Month', 'month', r => give(r.slice(1), 'month'));
      t.place('spent', 'Spent', op.totalWhere(columns.amount, columns.when, month));
    });
    return evaluateSheet(sheet);
  };
  it('of its own key', () => {
    const result = sheetOf(['1', '2', '1']);
    expect(why(result, 'm/m1/spent').steps.get('m/m1/spent')?.inputs).toEqual(['r/r0/amount', 'r/r2/amount']);
    expect(why(result, 'm/m2/spent').steps.get('m/m2/spent')?.inputs).toEqual(['r/r1/amount']);
  });
  it('and by the keys that are missing', () => {
    const result = sheetOf(['1', undefined, '2']);
    expect(result.figure('m/m1/spent').text).toBeUndefined();
    expect(sheetFindings(result, ['m/m1/spent']).map(found => found.message)).toEqual([
      'When of r1: it is not given.',
    ]);
  });
});

describe('a column of givens', () => {
  it('with a number of more digits than a double holds is read exactly, and each row for itself', () => {
    const sheet = new Sheet('s');
    const values = ['12345678901234567890.5', '2.5', undefined, 'x', '7'];
    const rows = {
      heading: 'R',
      of: values.map((_, i) => `r${i}`),
      key: (r: string) => r,
      title: (r: string) => r,
    };
    const { columns } = sheet.table('r', rows, t =>
      t.field('f', 'F', 'USD', r => ({
        ...give(values[Number(r.slice(1))], 'USD'),
        unit: r === 'r4' ? 'h' : 'USD',
      })),
    );
    const result = evaluateSheet(sheet);
    expect(result.column(columns).map(figure => figure.text)).toEqual([
      '12345678901234567890.5',
      '2.5',
      undefined,
      undefined,
      undefined,
    ]);
    expect(result.numbers(columns)).toEqual([
      Number('12345678901234567890.5'),
      2.5,
      undefined,
      undefined,
      undefined,
    ]);
    expect(['r1', 'r2'].map(row => result.number(columns, row))).toEqual([2.5, undefined]);
  });
  it('gives each row its own number', () => {
    const sheet = new Sheet('s');
    const rows = { heading: 'R', of: ['a', 'b', 'c'], key: (r: string) => r, title: (r: string) => r };
    sheet.block('first', 'First').given('x', 'X', 'h', give('9', 'h'));
    const { columns } = sheet.table('r', rows, t =>
      t.field('f', 'F', 'h', r => give(String(r.charCodeAt(0)), 'h')),
    );
    const result = evaluateSheet(sheet);
    expect(result.numbers(columns)).toEqual([97, 98, 99]);
    expect(['a', 'b', 'c'].map(row => result.number(columns, row))).toEqual([97, 98, 99]);
  });
});
