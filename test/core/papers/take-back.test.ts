import { describe, expect, test } from 'vitest';
import {
  inputCells,
  otherCells,
  estimateWorkbook,
  takeBack,
  type TypedContent,
  type TypedRow,
} from '../../../core/papers';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const first = evaluated(project);
const whole = { ...first, estimate: estimated(first) };
const cells = inputCells(whole);
const options = {
  document: project,
  origin: { kind: 'workbook', dated: '2026-11-24' },
  seed: 1,
  schedules: 20,
} as const;

function cellOf(key: string) {
  const found = cells.find(cell => cell.key === key);
  if (found === undefined) throw new Error(`there is no input ${key}`);
  return found;
}

function row(key: string, value: TypedContent, more: Partial<TypedRow> = {}): TypedRow {
  return { address: 'Inputs!D9', key, value, unit: cellOf(key).unit, basis: '', source: '', ...more };
}

function taken(...rows: TypedRow[]) {
  const { findings, ...rest } = takeBack(whole, rows, options);
  return { ...rest, findings: findings.filter(({ code }) => code !== 'take-back/rows-missing') };
}

const WAGE = '/rates/trades/abatement-worker/wage';

describe('figures taken back from a workbook', () => {
  test('every input names one place of the document, and every kind is there', () => {
    expect(new Set(cells.map(cell => cell.key)).size).toBe(cells.length);
    for (const kind of ['quantity', 'rate', 'quote', 'survey result', 'particular'])
      expect(cells.filter(cell => cell.kind === kind).length, kind).toBeGreaterThan(10);
  });

  test('a wage becomes an override of the rate book in its price year, and the total moves', () => {
    const { edits, project: changed, totals } = taken(row(WAGE, { kind: 'number', value: 30 }));
    expect(edits.map(edit => [edit.cell.key, edit.value, edit.basis])).toEqual([[WAGE, '30', 'judgement']]);
    expect(changed.rates.overrides).toMatchObject([
      { at: 'trades/abatement-worker/wage', figure: { value: '30', unit: 'USD/h', year: cellOf(WAGE).year } },
    ]);
    expect(totals.after?.cents).not.toBe(totals.before?.cents);
    expect(project.rates.overrides).toEqual([]);
  });

  test('a figure of more digits than a spreadsheet keeps is no change when it comes back at fifteen', () => {
    const key = '/rates/streams/used-oil/unitPrice';
    const figure = {
      value: '81.6071428',
      unit: 'USD/short-ton',
      basis: 'judgement',
      source: 'A test',
    } as const;
    const at = 'streams/used-oil/unitPrice';
    const again = evaluated({ ...project, rates: { ...project.rates, overrides: [{ at, figure }] } });
    const long = { ...again, estimate: estimated(again) };
    const gate = inputCells(long).find(cell => cell.key === key)?.value ?? '';
    expect(gate.replace(/\D/g, '').length).toBeGreaterThan(15);
    const value = Number(Number(gate).toFixed(12));
    expect(takeBack(long, [row(key, { kind: 'number', value })], options).edits).toEqual([]);
  });

  test('a survey result replaces the assumption of its driver and keeps what the person says of it', () => {
    const key = '/survey/measured/steam-lagging';
    const { project: changed } = taken(
      row(key, { kind: 'number', value: 1500 }, { basis: 'Surveyed', source: 'Second walk-through' }),
    );
    expect(changed.survey.measured.find(({ driver }) => driver === 'steam-lagging')?.figure).toMatchObject({
      value: '1500',
      basis: 'surveyed',
      source: 'Second walk-through',
    });
    expect(taken(row(key, { kind: 'blank' })).project.survey.measured.map(({ driver }) => driver)).toEqual([
      'oily-water-volume',
    ]);
  });

  test('a quote without a vendor is taken and said to be without one', () => {
    const { findings, project: changed } = taken(
      row('/quotes/stability-study/amount', { kind: 'number', value: 40_000 }),
      row('/quotes/stability-study/share', { kind: 'number', value: 1 }, { address: 'Inputs!D10' }),
    );
    expect(changed.quotes.slice(project.quotes.length)).toMatchObject([
      {
        covers: [{ item: 'stability-study', share: '1' }],
        amount: { value: '40000', unit: 'USD' },
        chosen: true,
      },
    ]);
    expect(findings.map(({ code }) => code)).toContain('take-back/quote-without-vendor');
  });

  test.each<[string, TypedContent, string]>([
    ['text that looks like a number', { kind: 'text', text: '31.50' }, 'as a number'],
    ['a number with a comma', { kind: 'text', text: '1,200' }, 'plain number'],
    ['an amount in another unit', { kind: 'text', text: '0.5 USD/min' }, 'USD/h'],
    ['a date', { kind: 'date', iso: '2027-03-04' }, 'plain number'],
    ['an error', { kind: 'other', words: 'the error #REF!' }, 'plain number'],
    ['nothing', { kind: 'blank' }, 'as it was'],
    ['an amount no figure can hold', { kind: 'number', value: 1e16 }, 'plain number'],
  ])('%s where a wage belongs is refused with its cell and what to do', (_, content, remedy) => {
    const { edits, findings, project: same } = taken(row(WAGE, content));
    expect(edits).toEqual([]);
    expect(findings).toMatchObject([{ place: 'Inputs!D9', weight: 'warns' }]);
    expect(findings[0]?.remedy).toContain(remedy);
    expect(same).toEqual(project);
  });

  test('a changed unit, an unknown basis, an unknown key and a second row are refused, never passed over', () => {
    const number = { kind: 'number', value: 30 } as const;
    const { edits, findings } = taken(
      row(WAGE, number, { unit: 'EUR/h' }),
      row(WAGE, number, { address: 'Inputs!D10' }),
      row('/rates/trades/burner/wage', number, { address: 'Inputs!D11', basis: 'guessed' }),
      { ...row(WAGE, number), key: '/vessel/name', address: 'Inputs!D12' },
    );
    expect(edits).toEqual([]);
    expect(findings.map(({ place }) => place)).toEqual([
      'Inputs!D9',
      'Inputs!D10',
      'Inputs!D11',
      'Inputs!D12',
    ]);
  });

  test('an amount beyond the limits of the document is refused at its cell', () => {
    const { edits, findings } = taken(row('/contingency/share', { kind: 'number', value: -0.5 }));
    expect(edits).toEqual([]);
    expect(findings).toMatchObject([{ place: 'Inputs!D9' }]);
  });

  test('hours move dates: the total at the dates of the paper and the one scheduled anew are both told', () => {
    const key = '/items/compartment-survey/hoursPerUnit';
    const { totals, findings } = taken(row(key, { kind: 'number', value: Number(cellOf(key).value) * 12 }));
    expect(cellOf(key).movesDates).toBe(true);
    expect(totals.after?.cents).not.toBe(totals.atSameDates?.cents);
    expect(findings.map(({ code }) => code)).toContain('take-back/dates-moved');
  });

  test('cells of the schedule, formulas, texts and rows put in are told with address and reason', () => {
    const paper = estimateWorkbook(first);
    if (paper === undefined) throw new Error('the example has an estimate');
    const schedule = paper.sheets.flatMap(({ name, cells: own }) =>
      own.flatMap(cell =>
        'role' in cell.content && cell.content.role === 'schedule' && 'value' in cell.content
          ? [{ sheet: name, row: cell.row, column: cell.column, value: cell.content.value }]
          : [],
      ),
    );
    const [at] = schedule.filter(({ sheet }) => sheet === 'Month');
    const months = at ?? schedule[0];
    if (months === undefined) throw new Error('the workbook has figures of the schedule');
    const found = otherCells(paper, [
      {
        sheet: months.sheet,
        row: months.row,
        column: months.column,
        content: { kind: 'number', value: months.value + 1 },
      },
      { sheet: 'Cover', row: 7, column: 2, content: { kind: 'number', value: 1 } },
      { sheet: 'Cover', row: 40, column: 1, content: { kind: 'text', text: 'my note' } },
      { sheet: 'Mine', row: 1, column: 1, content: { kind: 'text', text: 'my sheet' } },
    ]);
    const codes = found.filter(
      ({ code }) => code !== 'take-back/cell-emptied' && code !== 'take-back/more-cells',
    );
    expect(codes.map(({ code }) => code).sort()).toEqual([
      'take-back/beside-the-tables',
      'take-back/depends-on-dates',
      'take-back/formula-changed',
      'take-back/other-sheet',
    ]);
  });
});
