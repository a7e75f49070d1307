import ExcelJS from 'exceljs';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emitWorkbook, placeApart, type EmittedWorkbook, type Placement } from '../../core/sheet';
import { randomPair } from '../core/sheet/random-sheet';
import { findSoffice, recalculate, workFolder } from './recalculate';

const SHEETS = 300;
const PER_WORKBOOK = 100;
const ROWS_A_PAIR = 24;
const WRONG = 987654.321;

/** A figure of the engine and where it stands. */
interface Expected {
  readonly file: number;
  readonly sheet: string;
  readonly address: [number, number];
  readonly formula: string;
  readonly value: number | string;
  readonly isMoney: boolean;
  readonly seed: number;
}

/** The pair of a seed as workbook cells, stacked under the pairs before it on the same sheets. */
function emitted(seed: number, above: number): EmittedWorkbook {
  const pair = randomPair(seed);
  const results = [pair.work, pair.money];
  const placement: Placement = new Map(
    [...placeApart(results).keys()].map(id => [id, { sheet: `Sheet ${id}`, row: 1 + above * ROWS_A_PAIR }]),
  );
  return emitWorkbook(results, { placement, prefix: `p${seed}_` });
}

/** Adds a pair to a workbook with every cached result wrong, and notes what the engine says. */
function addTo(workbook: ExcelJS.Workbook, file: number, seed: number, expected: Expected[]): void {
  const model = emitted(seed, (seed - 1) % PER_WORKBOOK);
  for (const [name, cells] of model.sheets) {
    const sheet = workbook.getWorksheet(name) ?? workbook.addWorksheet(name);
    for (const { row, column, content } of cells) {
      const cell = sheet.getCell(row, column);
      const at = { file, sheet: name, address: [row, column] as [number, number], seed };
      if (content.kind === 'text') cell.value = content.text;
      else if (content.kind === 'input') cell.value = content.value;
      else if (content.kind === 'absent') {
        cell.value = content.text;
        expected.push({ ...at, formula: '', value: content.text, isMoney: false });
      } else if (content.kind === 'formula') {
        cell.value = { formula: content.formula, result: WRONG };
        expected.push({
          ...at,
          formula: content.formula,
          value: content.result,
          isMoney: content.format.kind === 'money',
        });
      }
    }
  }
  for (const { name, range } of model.names) workbook.definedNames.add(range, name);
}

function readBack(cell: ExcelJS.Cell): unknown {
  const { value } = cell;
  if (typeof value !== 'object' || value === null || !('formula' in value)) return value;
  return value.result ?? 0;
}

describe.skipIf(findSoffice() === undefined)('emitted formulas in LibreOffice', () => {
  const folder = workFolder();
  const expected: Expected[] = [];
  const books: ExcelJS.Workbook[] = [];

  beforeAll(async () => {
    const files: string[] = [];
    for (let file = 0; file * PER_WORKBOOK < SHEETS; file++) {
      const workbook = new ExcelJS.Workbook();
      for (let i = 0; i < PER_WORKBOOK; i++) addTo(workbook, file, file * PER_WORKBOOK + i + 1, expected);
      const path = join(folder, `pairs-${file}.xlsx`);
      await workbook.xlsx.writeFile(path);
      files.push(path);
    }
    for (const path of recalculate(folder, files)) {
      const workbook = new ExcelJS.Workbook();
      await workbook.xlsx.readFile(path);
      books.push(workbook);
    }
  }, 120_000);

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const found = (figure: Expected): unknown => {
    const cell = books[figure.file]?.getWorksheet(figure.sheet)?.getCell(...figure.address);
    return cell && readBack(cell);
  };
  const differs = (figure: Expected): boolean => {
    const value = found(figure);
    if (typeof figure.value === 'string' || typeof value !== 'number') return value !== figure.value;
    const gap = Math.abs(value - figure.value);
    return gap > (figure.isMoney ? 0.001 : 1e-9 * Math.max(1, Math.abs(figure.value)));
  };

  it(`recalculate to the exact figures on ${SHEETS} random pairs of sheets, every cached result planted wrong`, () => {
    const shown = expected
      .filter(differs)
      .map(f => `${f.seed} ${f.sheet} ${f.formula}: exact ${f.value}, found ${String(found(f))}`);
    expect(shown).toEqual([]);
    expect(expected.filter(f => f.formula !== '').length).toBeGreaterThan(20_000);
    expect(expected.filter(f => typeof f.value === 'string').length).toBeGreaterThan(500);
  });

  it('a figure that is wrong by one cent is caught', () => {
    const planted = expected.filter(f => f.isMoney && typeof f.value === 'number').slice(0, 50);
    const wrong = planted.map(f => ({ ...f, value: typeof f.value === 'number' ? f.value + 0.01 : f.value }));
    expect(wrong.filter(differs)).toHaveLength(50);
  });
});
