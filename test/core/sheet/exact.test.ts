import { describe, expect, it } from 'vitest';
import { evaluateSheet, sheetFindings } from '../../../core/sheet';
import { exampleItems, exampleSheet } from './example';

describe('a sheet', () => {
  it('prices a line by hand arithmetic', () => {
    const { sheet, lines, grand } = exampleSheet(exampleItems(3));
    const result = evaluateSheet(sheet);
    // 100.0 m2 at 2.0 m2/h = 50 h; 1.00 t in boxes of 9.5 t = 1; month 24003 → 1.0075
    expect(result.number(lines.columns.hours, 'line-1')).toBe(50);
    expect(result.number(lines.columns.boxes, 'line-1')).toBe(1);
    expect(result.number(lines.columns.labour, 'line-1')).toBe(20653.75);
    expect(result.number(lines.columns.disposal, 'line-1')).toBe(1332.42);
    expect(sheetFindings(result)).toEqual([]);
    expect(result.money(grand)?.cents).toBeGreaterThan(0);
    expect(result.figure('lines/line-1/labour').unit).toBe('USD');
    expect(result.figure('lines/line-2/quantity').unit).toBe('m');
  });
});
