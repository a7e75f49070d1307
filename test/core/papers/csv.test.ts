import Papa from 'papaparse';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvFile, csvFiles } from '../../../core/papers';
import { summarise } from '../../../core/evaluation';
import { dollarsOf } from '../../../core/money';
import { demoProject, estimated, evaluated } from '../evaluation/demo';
import { HOSTILE } from './hostile';

/** Rows as another reader sees them. */
function read(text: string): string[][] {
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), {
    newline: '\r\n',
    delimiter: ',',
  });
  expect(errors.filter(error => error.code !== 'UndetectableDelimiter')).toEqual([]);
  return data.slice(0, -1);
}

describe('a CSV file', () => {
  test('text that starts a formula is led by an apostrophe, and no cell a reader finds starts one', () => {
    expect(HOSTILE.length).toBeGreaterThanOrEqual(40);
    for (const [row] of read(csvFile(HOSTILE.map(words => [words])))) {
      const visible = (row ?? '').replace(/^[\s\p{Cc}\p{Cf}"]+/u, '');
      expect(visible).not.toMatch(/^[=+\-@\uff1d\uff0b\uff0d\uff20]/u);
    }
  });

  test('credits stay numbers: a minus before a number is not text', () => {
    expect(csvFile([['scrap', { value: -12.5, decimals: 2 }]])).toBe('\ufeffscrap,-12.50\r\n');
  });

  test('any text without formula signs reads back as it was', () => {
    const harmless = fc
      .string({ unit: 'grapheme' })
      .filter(
        words => !/\p{Cc}/u.test(words) && !/^[\s\p{Cf}'"]*[=+\-@|%\uff1d\uff0b\uff0d\uff20]/u.test(words),
      );
    fc.assert(
      fc.property(fc.array(fc.tuple(harmless, harmless), { minLength: 1, maxLength: 5 }), rows => {
        expect(read(csvFile(rows))).toEqual(rows);
      }),
    );
  });

  test('the files of the example hold every line, activity and month, and add up to the total', () => {
    const evaluation = evaluated(demoProject());
    const parts = estimated(evaluation);
    const summary = summarise(parts);
    const files = new Map(csvFiles(evaluation).map(({ name, text }) => [name, read(text)]));
    const total = summary.total === undefined ? Number.NaN : dollarsOf(summary.total);
    const sum = (rows: string[][], column: number) =>
      Math.round(rows.slice(1).reduce((all, row) => all + Number(row[column]), 0) * 100) / 100;
    const [lines = [], activities = [], cash = []] = ['lines', 'activities', 'cash'].map(name =>
      files.get(name as 'lines'),
    );
    expect(lines.length).toBe(summary.lines.length + 1);
    expect(sum(lines, 14)).toBe(total);
    expect(activities.length).toBe(parts.schedule.activities.length + 1);
    expect(sum(cash, 1)).toBe(total);
    expect(Number(cash.at(-1)?.[2])).toBe(total);
  });
});
