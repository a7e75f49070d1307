import { describe, expect, it } from 'vitest';
import * as op from '../../../core/sheet';
import { Sheet, emitWorkbook, evaluateSheet, type Given, type SheetResult } from '../../../core/sheet';
import { letterOf, placeApart, quotedName } from '../../../core/sheet/formula/layout';
import { give } from './example';

/** Two lines, one without a quantity, with units of their own; one price, one index. */
function smallSheet(): SheetResult {
  const sheet = new Sheet('small');
  const prices = sheet.block('prices', 'Prices');
  const factor = prices.given('share', 'Share', '1', give('0.25', '1'));
  const index = sheet.lookUpTable('index', {
    title: 'Index',
    keyUnit: 'month',
    unit: 'USD',
    entries: [
      { key: '1', title: 'First', given: give('2.50', 'USD') },
      { key: '2', title: 'Second', given: { ...give('0', 'USD'), value: undefined } },
    ],
  });
  const quote = (row: string): Given | undefined => (row === 'a' ? give('7.5', 'USD') : undefined);
  const { columns } = sheet.table(
    'lines',
    {
      heading: 'Lines: all',
      of: ['a', 'b'],
      key: r => r,
      title: r => `Line ${r}`,
      own: r => (r === 'a' ? 'm2' : 'm'),
    },
    t => {
      const calculated = t.place(
        'unit-price',
        'Price',
        op.scaled(op.lookUp(index, op.unity('month'), 0, 'absent'), factor),
      );
      const size = t.field('size', 'Size', 'own', r => (r === 'a' ? give('3.25', 'm2') : undefined));
      const stage = t.key('stage', 'Stage', r => (r === 'a' ? 'first' : undefined));
      const days = t.fromSchedule('days', 'Days', 'day', () => ({ value: '4', unit: 'day' }));
      const quoted = t.field('quote', 'Quote', 'USD', quote);
      t.place('boxes', 'Boxes', op.wholeUp(op.scaled(size, factor), 4));
      t.place('bid', 'Bid', op.quoted(quoted, calculated));
      return { days, stage, quoted, bid: t.place('per-day', 'A day', op.rounded(op.over(quoted, days), 3)) };
    },
  );
  prices.place('all', 'All days', op.total(columns.days));
  return evaluateSheet(sheet);
}

const emitted = emitWorkbook([smallSheet()]);
/** Rows of one sheet as lists of what stands in each cell. */
function grid(sheet: string, model = emitted): string[] {
  return model
    .partsOf(sheet)
    .flatMap(part => part())
    .toSorted((a, b) => a.row - b.row || a.column - b.column)
    .map(({ row, column, content }) => {
      const place = `${letterOf(column)}${row}`;
      switch (content.kind) {
        case 'text':
        case 'absent':
          return `${place} ${content.kind} ${content.text}`;
        case 'blank':
          return `${place} blank`;
        case 'input':
          return `${place} input ${content.value} ${content.format.kind} ${content.format.decimals ?? '-'}`;
        case 'formula':
          return `${place} =${content.formula} ${content.result} ${content.format.kind} ${content.format.decimals ?? '-'}`;
      }
    });
}

describe('a small sheet in the workbook', () => {
  it('has a sheet for each table, one of single values and one of look-ups', () => {
    expect(emitted.sheetNames).toEqual(['Lines  all', 'Inputs', 'Tables']);
    expect([...emitted.sheets.keys()]).toEqual(emitted.sheetNames);
    expect(emitted.partsOf('nowhere').flatMap(part => part())).toEqual([]);
  });

  it('has every line with its key, title and unit; what is given left, what is worked out right', () => {
    expect(grid('Lines  all')).toEqual([
      'A1 text Key',
      'B1 text Lines: all',
      'C1 text Unit',
      'D1 text Size',
      'E1 text Stage',
      'F1 text Days',
      'G1 text Quote',
      'H1 text Price',
      'I1 text Boxes',
      'J1 text Bid',
      'K1 text A day',
      'A2 text ',
      'B2 text ',
      'C2 text ',
      'D2 text own',
      'E2 text ',
      'F2 text day',
      'G2 text USD',
      'H2 text USD',
      'I2 text own',
      'J2 text USD',
      'K2 text USD/day',
      'A3 text a',
      'B3 text Line a',
      'C3 text m2',
      'D3 input 3.25 number 2',
      'E3 text first',
      'F3 input 4 number 0',
      'G3 input 7.5 money 2',
      'H3 =INDEX(index_values,MATCH(ROUND(1,0),index_rowKeys,0))*prices_share 0.625 money 2',
      'I3 =-INT(-ROUND(D3*prices_share,4)) 1 number 0',
      'J3 =IF(ISNUMBER(G3),G3,H3) 7.5 money 2',
      'K3 =ROUND(G3/F3,3) 1.875 number 3',
      'A4 text b',
      'B4 text Line b',
      'C4 text m',
      'D4 absent absent, see Findings',
      'E4 blank',
      'F4 input 4 number 0',
      'G4 absent absent, see Findings',
      'H4 =INDEX(index_values,MATCH(ROUND(1,0),index_rowKeys,0))*prices_share 0.625 money 2',
      'I4 absent absent, see Findings',
      'J4 =IF(ISNUMBER(G4),G4,H4) 0.625 money 2',
      'K4 absent absent, see Findings',
    ]);
  });

  it('has single values and entries with key, title, value and unit', () => {
    expect(grid('Inputs')).toEqual([
      'A1 text Key',
      'B1 text Prices',
      'C1 text Value',
      'D1 text Unit',
      'A2 text ',
      'B2 text ',
      'C2 text ',
      'D2 text ',
      'A3 text share',
      'B3 text Share',
      'C3 input 0.25 factor 2',
      'D3 text 1',
      'A4 text all',
      'B4 text All days',
      'C4 =SUM(lines_days) 8 number -',
      'D4 text day',
    ]);
    expect(grid('Tables').slice(8)).toEqual([
      'A3 input 1 number -',
      'B3 text First',
      'C3 input 2.5 money 2',
      'D3 text USD',
      'A4 input 2 number -',
      'B4 text Second',
      'C4 blank',
      'D4 text USD',
    ]);
  });

  it('says what stands where, and what people fill in', () => {
    expect(emitted.regions.map(({ columns: _, ...region }) => region)).toEqual([
      {
        id: 'lines',
        heading: 'Lines: all',
        sheet: 'Lines  all',
        headingRow: 1,
        firstRow: 3,
        lastRow: 4,
        guardRow: 5,
      },
      { id: 'prices', heading: 'Prices', sheet: 'Inputs', headingRow: 1, firstRow: 3, lastRow: 4 },
      { id: 'index', heading: 'Index', sheet: 'Tables', headingRow: 1, firstRow: 3, lastRow: 4 },
    ]);
    const [lines, prices] = emitted.regions;
    expect(lines?.columns.map(({ letter, key, role }) => `${letter} ${key} ${role}`)).toEqual([
      'A key name',
      'B title name',
      'C unit name',
      'D size input',
      'E stage input',
      'F days schedule',
      'G quote input',
      'H unit-price calculation',
      'I boxes calculation',
      'J bid calculation',
      'K per-day calculation',
    ]);
    expect(prices?.columns.map(({ letter, key, unit, role }) => [letter, key, unit, role])).toEqual([
      ['A', 'key', '', 'name'],
      ['B', 'title', '', 'name'],
      ['C', 'value', '', 'input'],
      ['D', 'unit', '', 'name'],
    ]);
  });

  it('names what its formulas use and every single value, nothing else', () => {
    expect(emitted.names).toEqual([
      { name: 'prices_share', range: 'Inputs!$C$3' },
      { name: 'prices_all', range: 'Inputs!$C$4' },
      { name: 'index_rowKeys', range: 'Tables!$A$3:$A$4' },
      { name: 'index_values', range: 'Tables!$C$3:$C$4' },
      { name: 'lines_days', range: "'Lines  all'!$F$3:$F$5" },
    ]);
    expect(emitted.tooLong).toEqual([]);
  });

  it('stands beside another under a prefix, and where it is put', () => {
    const result = smallSheet();
    const placement = new Map([
      ['lines', { sheet: 'AB12', row: 10 }],
      ['prices', { sheet: 'Costs', row: 4 }],
      ['index', { sheet: 'Costs', row: 20 }],
    ]);
    const model = emitWorkbook([result], { placement, prefix: 'two_' });
    expect(model.sheetNames).toEqual(['AB12', 'Costs']);
    expect(model.names).toContainEqual({ name: 'two_lines_days', range: "'AB12'!$F$12:$F$14" });
    expect(model.names).toContainEqual({ name: 'two_index_values', range: 'Costs!$C$22:$C$23' });
    expect(grid('AB12', model)).toContain('K12 =ROUND(G12/F12,3) 1.875 number 3');
    expect(grid('AB12', model)).toContain('I12 =-INT(-ROUND(D12*two_prices_share,4)) 1 number 0');
    placement.delete('index');
    expect(() => emitWorkbook([result], { placement })).toThrow('index has no place in the workbook');
  });
});

describe('what cannot stand in a workbook is refused in words', () => {
  const hours = give('1', 'h');
  it.each<[string, (sheet: Sheet) => unknown]>([
    [
      'two ranges of the workbook have the name a_b_c',
      sheet => {
        sheet.block('a', 'A').given('b-c', 'BC', 'h', hours);
        sheet.block('a-b', 'AB').given('c', 'C', 'h', hours);
      },
    ],
    [
      `the name b_${'k'.repeat(254)} is too long for a workbook`,
      sheet => sheet.block('b', 'B').given('k'.repeat(254), 'K', 'h', hours),
    ],
    [
      '"[?]" cannot name a sheet of a workbook',
      sheet => sheet.table('t', { heading: '[?]', of: ['a'], key: r => r, title: r => r }, () => 0),
    ],
    [
      'sum is used by "P" and "Q": place it',
      sheet => {
        const b = sheet.block('b', 'B');
        const x = b.given('x', 'X', 'h', hours);
        const twice = op.sum(x, x);
        b.place('p', 'P', op.scaled(twice));
        b.place('q', 'Q', op.scaled(twice));
      },
    ],
  ])('%s', (words, build) => {
    const sheet = new Sheet('s');
    build(sheet);
    expect(() => emitWorkbook([evaluateSheet(sheet)]).sheets).toThrow(words);
  });

  it('the longest name fits', () => {
    const sheet = new Sheet('s');
    sheet.block('b', 'B').given('k'.repeat(253), 'K', 'h', hours);
    expect(emitWorkbook([evaluateSheet(sheet)]).names).toHaveLength(1);
  });
});

describe('where things stand', () => {
  it.each([
    [1, 'A'],
    [26, 'Z'],
    [27, 'AA'],
    [52, 'AZ'],
    [53, 'BA'],
    [702, 'ZZ'],
    [703, 'AAA'],
  ])('column %d is %s', (column, letter) => expect(letterOf(column)).toBe(letter));

  it.each([
    ['Lines', 'Lines'],
    ['L1_x', 'L1_x'],
    ['ABCD12', 'ABCD12'],
    ['ABC12', "'ABC12'"],
    ['a1', "'a1'"],
    ['1st', "'1st'"],
    ['Two words', "'Two words'"],
    ['', "''"],
  ])('a formula writes the sheet %s as %s', (name, written) => expect(quotedName(name)).toBe(written));

  it('tables stand apart, blocks and look-ups below one another with two rows between, names within 31 letters', () => {
    const sheet = new Sheet('s');
    const heading = "A 'long' heading: of more than 31 letters";
    sheet.table('t', { heading, of: ['a', 'b'], key: r => r, title: r => r }, () => 0);
    for (const id of ['one', 'two']) {
      const block = sheet.block(id, id);
      block.given('x', 'X', 'h', undefined);
      block.given('y', 'Y', 'h', undefined);
    }
    const entries = [{ key: '1', title: '1', given: give('1', '1') }];
    for (const id of ['three', 'four'])
      sheet.lookUpTable(id, { title: id, keyUnit: '1', unit: '1', entries });
    expect([...placeApart([evaluateSheet(sheet)])]).toEqual([
      ['t', { sheet: 'A  long  heading  of more than', row: 1 }],
      ['one', { sheet: 'Inputs', row: 1 }],
      ['two', { sheet: 'Inputs', row: 7 }],
      ['three', { sheet: 'Tables', row: 1 }],
      ['four', { sheet: 'Tables', row: 6 }],
    ]);
  });
});
