import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { estimateWorkbook, type PaperCell, type PaperWorkbook } from '../../core/papers';
import { evaluate } from '../../core/evaluation';
import { compareScenarios, riskFacts } from '../../core/scenario';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { demoProject } from '../core/evaluation/demo';
import { findSoffice, recalculate, workFolder } from './recalculate';

const project = demoProject();
const evaluations = project.scenarios.map(scenario =>
  evaluate(project, { today: '2026-11-24', seed: 1, schedules: 20, scenario: scenario.id }),
);
const risks = evaluations.flatMap(one => riskFacts(one, { trials: 200, seed: 1 }) ?? []);
const [first] = evaluations;
if (first === undefined) throw new Error('the example has scenarios');
const paper = estimateWorkbook(first, compareScenarios(evaluations, risks));
if (paper === undefined) throw new Error('the example has no estimate');

/** Every cell with a number or a formula, by sheet and address; the value a reader sees. */
async function values(file: string): Promise<Map<string, unknown>> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const found = new Map<string, unknown>();
  book.eachSheet(sheet =>
    sheet.eachRow(row =>
      row.eachCell(cell => {
        const { value } = cell;
        const isFormula = value !== null && typeof value === 'object' && 'formula' in value;
        found.set(
          `${sheet.name}!${cell.address}`,
          isFormula ? ((value as { result?: unknown }).result ?? 0) : value,
        );
      }),
    ),
  );
  return found;
}

async function written(
  file: string,
  plant?: (book: ExcelJS.Workbook) => void,
  of: PaperWorkbook | undefined = paper,
): Promise<void> {
  const bytes = await writeWorkbook(of as NonNullable<typeof of>);
  if (plant === undefined) {
    writeFileSync(file, bytes);
    return;
  }
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.buffer as ArrayBuffer);
  plant(book);
  await book.xlsx.writeFile(file);
}

type Place = Pick<PaperCell, 'row' | 'column'>;

/** The first cell of a sheet that is as described. */
function placeOf(sheet: string, is: (cell: PaperCell) => boolean): Place {
  const found = paper?.sheets.find(({ name }) => name === sheet)?.cells.find(is);
  if (found === undefined) throw new Error(`${sheet} has no such cell`);
  return found;
}

describe('the workbook of the example', () => {
  test('has a sheet for everything a reviewer asks for', () => {
    const names = paper.sheets.map(({ name }) => name);
    for (const name of [
      'Inputs',
      'Risk',
      'Upright screen',
      'Funding forms',
      'Labour and crews',
      'Waste by stream',
    ])
      expect(names).toContain(name);
  });

  test('no formula is longer than 120 characters, and every one carries its result', () => {
    const formulas = paper.sheets.flatMap(sheet =>
      sheet.cells.flatMap(({ content }) => (content.kind === 'formula' ? [content] : [])),
    );
    expect(formulas.length).toBeGreaterThan(10_000);
    expect(formulas.filter(({ formula }) => formula.length > 120).map(({ formula }) => formula)).toEqual([]);
    expect(formulas.filter(({ result }) => typeof result === 'number' && !Number.isFinite(result))).toEqual(
      [],
    );
  });

  test.skipIf(findSoffice() === undefined)(
    'LibreOffice recalculates every number to what the engine says, without an error; a planted wrong result is caught',
    async () => {
      const folder = workFolder();
      const [good, planted] = [join(folder, 'good.xlsx'), join(folder, 'planted.xlsx')];
      await written(good);
      let address = '';
      await written(planted, book => {
        const cell = book.getWorksheet('Cover')?.getCell('B7');
        address = 'Cover!B7';
        const value = cell?.value as { formula: string } | undefined;
        if (cell !== undefined && value !== undefined) cell.value = { formula: value.formula, result: 1 };
      });
      const [again = '', caught = ''] = recalculate(folder, [good, planted]);
      const [before, after] = [await values(good), await values(again)];
      const differing = [...before].filter(
        ([key, value]) =>
          typeof value === 'number' &&
          !(Math.abs(Number(after.get(key)) - value) <= 0.005 + 1e-9 * Math.abs(value)),
      );
      const errors = [...after].filter(
        ([, value]) => value !== null && typeof value === 'object' && 'error' in value,
      );
      expect(differing).toEqual([]);
      expect(errors).toEqual([]);
      expect(after.get('Cover!B5')).toBe('OK');
      expect((await values(planted)).get(address)).toBe(1);
      expect((await values(caught)).get(address)).toBe(before.get(address));
    },
  );

  test.skipIf(findSoffice() === undefined)(
    'what no source bears yet fails its check and the master check, in LibreOffice as in the program',
    async () => {
      const cap = { value: '1000', unit: 'USD', basis: 'judgement' as const, source: 'This test' };
      const funding = project.funding && {
        ...project.funding,
        sources: project.funding.sources.map(source => ({ ...source, cap })),
      };
      const capped = evaluate(
        { ...project, ...(funding && { funding }) },
        { today: '2026-11-24', seed: 1, schedules: 20, scenario: first.scenario.id },
      );
      const folder = workFolder();
      const file = join(folder, 'capped.xlsx');
      await written(file, undefined, estimateWorkbook(capped));
      const [again = ''] = recalculate(folder, [file]);
      const [before, after] = [await values(file), await values(again)];
      const differing = [...before].filter(([key, value]) =>
        typeof value === 'number'
          ? !(Math.abs(Number(after.get(key)) - value) <= 0.005 + 1e-9 * Math.abs(value))
          : /^(Checks!C|Cover!B5)/.test(key) && after.get(key) !== value,
      );
      expect(differing).toEqual([]);
      expect([before.get('Cover!B5'), after.get('Cover!B5')]).toEqual(['REVIEW', 'REVIEW']);
      expect(
        [...after].filter(([key, value]) => key.startsWith('Checks!C') && value === 'REVIEW'),
      ).toHaveLength(1);
    },
  );

  test.skipIf(findSoffice() === undefined)(
    'the master check stays OK after a change of an input, and asks for a look when a bridge, a form or a crew is off',
    async () => {
      const folder = workFolder();
      const wage = placeOf('Inputs', ({ column, content }) => column === 3 && content.kind === 'number');
      const planted: readonly [string, Place, string][] = [
        ['Inputs', wage, 'OK'],
        [
          'Comparison',
          placeOf(
            'Comparison',
            ({ row, column, content }) => row > 9 && column === 2 && content.kind === 'money',
          ),
          'REVIEW',
        ],
        [
          'Funding forms',
          placeOf('Funding forms', ({ column, content }) => column === 2 && content.kind === 'money'),
          'REVIEW',
        ],
        [
          'Labour and crews',
          placeOf('Labour and crews', ({ column, content }) => column === 5 && content.kind === 'formula'),
          'REVIEW',
        ],
      ];
      const files: string[] = [];
      for (const [i, [sheet, { row, column }]] of planted.entries()) {
        const file = join(folder, `off-${i}.xlsx`);
        await written(file, book => {
          const cell = book.getWorksheet(sheet)?.getCell(row, column);
          if (cell !== undefined) cell.value = i === 0 ? Number(cell.value) * 1.1 : 987_654.32;
        });
        files.push(file);
      }
      const told = await Promise.all(recalculate(folder, files).map(values));
      expect(told.map(cells => cells.get('Cover!B5'))).toEqual(planted.map(([, , standing]) => standing));
      const changed = placeOf(
        'Checks',
        ({ content }) => content.kind === 'formula' && content.formula.startsWith('ROUND(sums_total-B'),
      );
      expect(Math.abs(Number(told[0]?.get(`Checks!B${changed.row}`)))).toBeGreaterThan(0);
    },
  );
});
