import { describe, expect, it } from 'vitest';
import { BugError } from '../../../core/base';
import * as op from '../../../core/sheet';
import {
  ABSENT_TEXT,
  LONGEST_FORMULA,
  Sheet,
  emitWorkbook,
  evaluateSheet,
  type EmittedWorkbook,
} from '../../../core/sheet';
import { exampleItems, exampleSheet, give } from './example';
import { randomPair } from './random-sheet';

/** The formulas of a column, first to last. */
function formulas(model: EmittedWorkbook, id: string, key: string): string[] {
  const region = model.regions.find(r => r.id === id);
  const column = (region?.columns.findIndex(c => c.key === key) ?? -2) + 1;
  return (model.sheets.get(region?.sheet ?? '') ?? []).flatMap(({ column: at, row, content }) =>
    at === column && row >= (region?.firstRow ?? 0) && content.kind === 'formula' ? [content.formula] : [],
  );
}

/** A formula with its own row written as R: equal for all rows of one form. */
const relative = (formula: string, row: number) =>
  formula.replaceAll(
    /(?<![$A-Z\d_])([A-Z]{1,3})(\d+)\b/g,
    (_, letters: string, digits: string) => `${letters}[${Number(digits) - row}]`,
  );

describe('emitted formulas', () => {
  const model = emitWorkbook([evaluateSheet(exampleSheet(exampleItems(30)).sheet)]);

  it('read like a good workbook', () => {
    expect(formulas(model, 'lines', 'hours')[0]).toBe('ROUND(Q3/E3,1)');
    expect(formulas(model, 'lines', 'boxes')[0]).toBe('-INT(-ROUND(S3/G3,4))');
    expect(formulas(model, 'lines', 'direct')[0]).toBe('IF(ISNUMBER(P3),P3,AB3)');
    expect(formulas(model, 'lines', 'escalation')[0]).toBe(
      'INDEX(escalation_values,MATCH(MIN(ROUND(M3,0),MAX(escalation_rowKeys)),escalation_rowKeys,0))',
    );
    expect(formulas(model, 'lines', 'overhead')[0]).toBe('ROUND((V3+W3)*L3*site_overhead,2)');
  });

  it('have one form a column, no literal but 0, 1 and rounding digits, and no power sign', () => {
    for (const { sheet } of [exampleSheet(exampleItems(30))]) {
      const emitted = emitWorkbook([evaluateSheet(sheet)]);
      for (const { id, columns, firstRow } of emitted.regions)
        for (const { key } of columns) {
          const forms = formulas(emitted, id, key).map((formula, i) => relative(formula, firstRow + i));
          if (id === 'lines') expect(new Set(forms).size).toBeLessThanOrEqual(1);
        }
    }
    for (let seed = 1; seed <= 40; seed++) {
      const pair = randomPair(seed);
      const emitted = emitWorkbook([pair.work, pair.money]);
      for (const cells of emitted.sheets.values())
        for (const { content } of cells) {
          if (content.kind !== 'formula') continue;
          expect(content.formula).not.toContain('^');
          const bare = content.formula
            .replaceAll(/,\d+\)/g, ')')
            .replaceAll(/\$?[A-Z]{1,3}\$?\d+/g, 'c')
            .replaceAll(/[a-z]+_\w+/gi, 'n');
          expect(
            bare
              .replaceAll(/[A-Za-z]\w*/g, '')
              .match(/\d+/g)
              ?.filter(n => n !== '0' && n !== '1') ?? [],
          ).toEqual([]);
        }
    }
  });

  it('name single values, and ranges that take in a guard row below the last', () => {
    const ranges = new Map(model.names.map(({ name, range }) => [name, range]));
    expect(ranges.get('site_haul')).toBe('Inputs!$C$3');
    expect(ranges.get('lines_total')).toMatch(/^Lines!\$[A-Z]+\$3:\$[A-Z]+\$33$/);
    expect(model.regions.find(r => r.id === 'lines')).toMatchObject({
      firstRow: 3,
      lastRow: 32,
      guardRow: 33,
    });
  });

  it('are short enough to read, and a longer one is reported', () => {
    expect(model.tooLong).toEqual([]);
    const sheet = new Sheet('s');
    const b = sheet.block('block-of-single-values', 'B');
    const steps = Array.from({ length: 6 }, (_, i) =>
      b.given(`quite-a-long-key-${i}`, 'X', 'h', give('1', 'h')),
    );
    const [first, ...rest] = steps;
    if (first) b.place('all', 'All', op.sum(first, ...rest));
    const long = emitWorkbook([evaluateSheet(sheet)]).tooLong;
    expect(long).toHaveLength(1);
    expect(long[0]?.length).toBeGreaterThan(LONGEST_FORMULA);
  });

  it('write what is absent and all that depends on it as text, an unused quote as blank', () => {
    const items = exampleItems(3).map((item, i) => (i === 1 ? { ...item, quantity: undefined } : item));
    const emitted = emitWorkbook([evaluateSheet(exampleSheet(items).sheet)]);
    const lines = emitted.sheets.get('Lines') ?? [];
    const kinds = (row: number) => new Set(lines.filter(c => c.row === row).map(c => c.content.kind));
    expect(kinds(4).has('absent')).toBe(true);
    expect(kinds(3).has('absent')).toBe(false);
    expect(kinds(3).has('blank')).toBe(true);
    const totals = (emitted.sheets.get('Inputs') ?? []).map(c => c.content);
    expect(totals.filter(c => c.kind === 'absent')).toEqual([{ kind: 'absent', text: ABSENT_TEXT }]);
  });

  it('refuse a hidden step that two formulas would repeat', () => {
    const sheet = new Sheet('s');
    const b = sheet.block('b', 'B');
    const x = b.given('x', 'X', 'h', give('1', 'h'));
    const twice = op.sum(x, x);
    b.place('p', 'P', op.scaled(twice));
    b.place('q', 'Q', op.scaled(twice));
    expect(() => emitWorkbook([evaluateSheet(sheet)])).toThrow(BugError);
  });
});
