import { describe, expect, it } from 'vitest';
import { BugError } from '../../../core/base';
import * as op from '../../../core/sheet';
import { Sheet, evaluateSheet, sheetFindings, type Given } from '../../../core/sheet';
import { give } from './example';

const usd = (value: string | undefined): Given => give(value, 'USD');

function block(build: (b: op.Block, sheet: Sheet) => void) {
  const sheet = new Sheet('s');
  build(sheet.block('b', 'Block'), sheet);
  return evaluateSheet(sheet);
}

const refused = (build: (b: op.Block, sheet: Sheet) => void) => expect(() => block(build)).toThrow(BugError);

describe('a recipe is refused when it is built', () => {
  const cost = (b: op.Block) => b.given('cost', 'Cost', 'USD', usd('100'));
  const third = (b: op.Block) => b.given('third', 'Third', '1', give('3', '1'));

  it('when a raw quotient reaches cents', () => {
    refused(b => b.place('x', 'X', op.dollars(op.over(cost(b), third(b)))));
    expect(
      block(b => b.place('x', 'X', op.dollars(op.rounded(op.over(cost(b), third(b)), 4)))).figure('b/x').text,
    ).toBe('33.33');
  });

  it('when a raw power reaches a jump, a key or cents', () => {
    refused(b => {
      const f = third(b);
      b.place('x', 'X', op.wholeUp(op.power(f, f), 4));
    });
    refused(b => {
      const f = third(b);
      b.place('x', 'X', op.atLeast(f, op.power(f, f), 4));
    });
    refused((b, sheet) => {
      const f = third(b);
      const table = sheet.lookUpTable('t', { title: 'T', keyUnit: '1', unit: '1', entries: [] });
      b.place('x', 'X', op.lookUp(table, op.power(f, f), 2, 'absent'));
    });
    refused(b => {
      const f = third(b);
      b.place('x', 'X', op.dollars(op.scaled(cost(b), op.power(f, f))));
    });
  });

  it('when a difference is multiplied on its way to cents without a rounding', () => {
    refused(b => {
      const a = cost(b);
      b.place('x', 'X', op.dollars(op.scaled(op.difference(a, a), third(b))));
    });
  });

  it('when steps of two tables meet, or a column is used as a single value', () => {
    refused((_, sheet) => {
      const rows = { heading: 'T', of: ['a'], key: (r: string) => r, title: (r: string) => r };
      const one = sheet.table('one', rows, t => ({ x: t.field('x', 'X', 'h', () => give('1', 'h')) }));
      sheet.table('two', rows, t =>
        t.place(
          'y',
          'Y',
          op.sum(
            t.field('z', 'Z', 'h', () => give('1', 'h')),
            one.columns.x,
          ),
        ),
      );
    });
    refused((b, sheet) => {
      const rows = { heading: 'T', of: ['a'], key: (r: string) => r, title: (r: string) => r };
      const one = sheet.table('one', rows, t => ({ x: t.field('x', 'X', 'h', () => give('1', 'h')) }));
      b.place('y', 'Y', op.scaled(one.columns.x));
    });
  });

  it('when a step of another sheet is used without carrying it over', () => {
    const other = new Sheet('other');
    const single = other.block('o', 'Other').given('x', 'X', 'h', give('1', 'h'));
    refused(b => b.place('y', 'Y', op.sum(single, single)));
  });

  it('when ids, keys or rows come twice or cannot be keys', () => {
    refused((_, sheet) => sheet.block('b', 'Again'));
    refused(b => {
      b.given('x', 'X', 'h', undefined);
      b.given('x', 'X again', 'h', undefined);
    });
    const rows = (of: string[]) => ({ heading: 'T', of, key: (r: string) => r, title: (r: string) => r });
    refused((_, sheet) => sheet.table('t', rows(['a', 'A']), () => undefined));
    refused((_, sheet) => sheet.table('t', rows(['1e5']), () => undefined));
    refused((_, sheet) => sheet.table('t', rows(['a*']), () => undefined));
  });

  it('when a quote that its formula names twice is not placed', () => {
    refused(b => {
      const a = cost(b);
      b.place('x', 'X', op.quoted(op.sum(a, a), a));
    });
  });
});

describe('absent figures', () => {
  it('make everything that depends on them absent, the total too, with one finding for the cause', () => {
    const sheet = new Sheet('s');
    const lines = sheet.table(
      'lines',
      { heading: 'Lines', of: ['a', 'b'], key: r => r, title: r => `Line ${r}`, place: r => `/lines/${r}` },
      t => {
        const hours = t.field('hours', 'Hours', 'h', r => give(r === 'a' ? undefined : '8', 'h'));
        const rate = t.field('rate', 'Rate', 'USD/h', () => give('40', 'USD/h'));
        return { cost: t.place('cost', 'Cost', op.dollars(op.priced(hours, rate))) };
      },
    );
    const totals = sheet.block('totals', 'Totals');
    totals.place('all', 'Total', op.total(lines.columns.cost));
    totals.place('known', 'Known so far', op.knownSoFar(lines.columns.cost));
    totals.place('count', 'Lines known', op.countKnown(lines.columns.cost));
    const result = evaluateSheet(sheet);
    expect(['totals/all', 'totals/known', 'totals/count'].map(id => result.figure(id).number)).toEqual([
      undefined,
      320,
      1,
    ]);
    expect(sheetFindings(result).map(f => [f.code, f.place, f.message])).toEqual([
      ['sheet/not-given', '/lines/a', 'Hours of Line a: it is not given.'],
    ]);
    expect(sheetFindings(result, ['lines/b/cost'])).toEqual([]);
  });

  it('are a wrong unit, a division by zero, a key beyond its table, a row that does not exist', () => {
    const sheet = new Sheet('s');
    const entries = ['1', '2'].map(key => ({ key, title: key, given: give('5', '1') }));
    const table = sheet.lookUpTable('t', { title: 'Index', keyUnit: 'month', unit: '1', entries });
    const b = sheet.block('b', 'Block');
    const wrong = b.given('wrong', 'Wrong', 'm', { ...give('5', 'ft'), place: '/wrong' });
    const zero = b.given('zero', 'Zero', '1', give('0', '1'));
    const three = b.given('three', 'Three', 'month', give('3', 'month'));
    b.place('a', 'A', op.scaled(wrong));
    b.place('q', 'Q', op.rounded(op.over(zero, op.scaled(zero)), 2));
    b.place('l', 'L', op.lookUp(table, three, 0, 'absent'));
    b.place('h', 'Held', op.lookUp(table, three, 0, 'hold the last'));
    sheet.table('rows', { heading: 'Rows', of: ['a'], key: r => r, title: r => r }, t => {
      t.place(
        'f',
        'Fetched',
        op.fetched(
          t.key('k', 'K', () => 'nowhere'),
          b,
          '1',
        ),
      );
    });
    const result = evaluateSheet(sheet);
    expect(result.figure('b/h').text).toBe('5');
    expect(sheetFindings(result).map(f => f.message)).toEqual([
      'Fetched of a: there is no single value of that name in this unit.',
      'Wrong: it is given in ft, not in m.',
      expect.stringContaining('the division is by zero'),
      'L: Index has no value for 3 month.',
    ]);
  });

  it('raise nothing from a branch not taken', () => {
    const result = block(b => {
      const zero = b.given('zero', 'Zero', '1', give('0', '1'));
      b.place('x', 'X', op.when(zero, op.over(op.unity('1'), zero), op.unity('1')));
    });
    expect(result.figure('b/x').text).toBe('1');
    expect(sheetFindings(result)).toEqual([]);
  });
});
