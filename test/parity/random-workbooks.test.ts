import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { randomStream } from '../../core/base';
import { evaluate } from '../../core/evaluation';
import { estimateWorkbook, type PaperWorkbook } from '../../core/papers';
import type { Project } from '../../core/project';
import { compareScenarios, riskFacts } from '../../core/scenario';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { demoProject } from '../core/evaluation/demo';
import { convert, findSoffice, insertRow, recalculate, workFolder } from './recalculate';

/**
 * Random projects by their seeds: 1 to 30 when the long run is asked for. `REEFWRIGHT_DRAWN=6-10` takes a part of them,
 * so that the long run can be made in pieces.
 */
const [FROM, TO] = (
  process.env['REEFWRIGHT_DRAWN'] ?? (process.env['REEFWRIGHT_LONG'] === '1' ? '1-30' : '1-2')
)
  .split('-')
  .map(Number);
const SEEDS = Array.from({ length: (TO ?? 2) - (FROM ?? 1) + 1 }, (_, i) => (FROM ?? 1) + i);
/** How many workbooks LibreOffice is given at once. */
const AT_ONCE = 5;
const WRONG = 987_654.321;

/** A project like the example with other options, particulars, mark-ups and scenarios, by a seed. */
function randomProject(seed: number): Project {
  const project = demoProject();
  const next = randomStream(seed, 'drawn project');
  const between = (low: number, high: number, decimals = 0) =>
    (low + (high - low) * next()).toFixed(decimals);
  const figure = (value: string, unit: string) => ({
    value,
    unit,
    basis: 'judgement' as const,
    source: 'Drawn for a test',
  });
  return {
    ...project,
    title: `Drawn project ${seed}`,
    vessel: {
      ...project.vessel,
      built: Number(between(1942, 1985)),
      tanks: project.vessel.tanks.map(tank => ({ ...tank, capacity: figure(between(5, 400, 1), 'm3') })),
    },
    site: {
      ...project.site,
      towDistance: figure(between(20, 900), 'nmi'),
      yardDistance: figure(between(5000, 200000), 'm'),
    },
    survey: { ...project.survey, measured: next() < 0.5 ? [] : project.survey.measured },
    rates: {
      ...project.rates,
      overrides: [
        { at: 'markUps/profit/share', figure: figure(between(0.03, 0.2, 3), '1') },
        { at: 'trades/burner/wage', figure: { ...figure(between(18, 60, 2), 'USD/h'), year: 2026 } },
      ],
    },
    contingency: { policy: 'percentage', share: figure(between(0.05, 0.6, 3), '1') },
  };
}

/** The workbook of a drawn project: one of its scenarios, compared and simulated. */
function drawnPaper(seed: number): PaperWorkbook {
  const project = randomProject(seed);
  const evaluations = project.scenarios.map(({ id }) =>
    evaluate(project, { today: '2026-11-24', seed, schedules: 1, scenario: id }),
  );
  const chosen = evaluations[seed % evaluations.length];
  const risks = evaluations.flatMap(one => riskFacts(one, { trials: 100, seed: 1 }) ?? []);
  const paper = chosen && estimateWorkbook(chosen, compareScenarios(evaluations, risks));
  if (paper === undefined) throw new Error(`drawn project ${seed} has no estimate`);
  return paper;
}

/** The paper with every cached result wrong, so that none can be believed. */
function spoilt(paper: PaperWorkbook): PaperWorkbook {
  return {
    ...paper,
    sheets: paper.sheets.map(sheet => ({
      ...sheet,
      cells: sheet.cells.map(cell =>
        cell.content.kind === 'formula' && typeof cell.content.result === 'number'
          ? { ...cell, content: { ...cell.content, result: WRONG } }
          : cell,
      ),
    })),
  };
}

interface Differences {
  readonly wrong: string[];
  /** Cells that hold an error such as #REF!. */
  readonly errors: string[];
  readonly compared: number;
}

/** Cells of a read workbook that are not what the paper says: money to the cent, other numbers to what is printed. */
async function differing(file: string, paper: PaperWorkbook): Promise<Differences> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const wrong: string[] = [];
  const errors: string[] = [];
  book.eachSheet(sheet =>
    sheet.eachRow(row =>
      row.eachCell(cell => {
        const value = cell.formula ? cell.result : cell.value;
        if (typeof value === 'object' && value !== null && 'error' in value)
          errors.push(`${sheet.name}!${cell.address}`);
      }),
    ),
  );
  let compared = 0;
  for (const sheet of paper.sheets) {
    const read = book.getWorksheet(sheet.name);
    for (const { row, column, content } of sheet.cells) {
      const wanted =
        content.kind === 'formula'
          ? content.result
          : content.kind === 'number' || content.kind === 'money'
            ? content.value
            : undefined;
      if (typeof wanted !== 'number') continue;
      compared++;
      const cell = read?.getCell(row, column);
      const value = cell?.formula ? cell.result : cell?.value;
      const gap = typeof value === 'number' ? Math.abs(value - wanted) : Number.POSITIVE_INFINITY;
      if (gap > 0.005 && gap > 1e-9 * Math.abs(wanted))
        wrong.push(`${sheet.name} ${row},${column}: ${JSON.stringify(value)}, not ${wanted}`);
    }
  }
  return { wrong, errors, compared };
}

describe.skipIf(findSoffice() === undefined)('workbooks of drawn projects', () => {
  test(`LibreOffice recalculates every cell of projects ${SEEDS[0] ?? 0} to ${SEEDS.at(-1) ?? 0} to what the program says, every cached result planted wrong`, async () => {
    const folder = workFolder();
    let cells = 0;
    for (let at = 0; at < SEEDS.length; at += AT_ONCE) {
      const papers = SEEDS.slice(at, at + AT_ONCE).map(drawnPaper);
      const files: string[] = [];
      for (const [i, paper] of papers.entries()) {
        const file = join(folder, `drawn-${at + i}.xlsx`);
        writeFileSync(file, await writeWorkbook(spoilt(paper)));
        files.push(file);
      }
      const again = recalculate(folder, files);
      for (const [i, paper] of papers.entries()) {
        const { wrong, errors, compared } = await differing(again[i] ?? '', paper);
        expect(wrong.slice(0, 10), paper.title).toEqual([]);
        expect(errors, paper.title).toEqual([]);
        expect(compared).toBeGreaterThan(15_000);
        cells += compared;
      }
    }
    process.stdout.write(`${SEEDS.length} drawn projects, ${cells} numeric cells recalculated alike\n`);
  }, 1_400_000);

  test('no value is lost on the way to ODS and back; without the recalculation the planted results show', async () => {
    const folder = workFolder();
    const paper = drawnPaper(SEEDS[0] ?? 1);
    const file = join(folder, 'drawn.xlsx');
    writeFileSync(file, await writeWorkbook(spoilt(paper)));
    const back = convert(folder, 'xlsx', convert(folder, 'ods', [file], 'ods'), 'back');
    expect((await differing(back[0] ?? '', paper)).wrong.slice(0, 10)).toEqual([]);
    expect((await differing(file, paper)).wrong.length).toBeGreaterThan(5000);
  }, 1_400_000);

  test('a row that LibreOffice inserts at the end of the lines is in the total, and the checks still hold', async () => {
    const folder = workFolder();
    const paper = drawnPaper(3);
    const file = join(folder, 'guard.xlsx');
    writeFileSync(file, await writeWorkbook(paper));
    const lines = paper.sheets.find(({ name }) => name === 'Lines');
    const heads = lines?.cells.filter(cell => cell.row === 1) ?? [];
    const guard = lines?.cells.reduce((most, cell) => Math.max(most, cell.row), 0) ?? 0;
    const column = (head: string) =>
      heads.find(({ content }) => content.kind === 'text' && content.text === head)?.column ?? 0;
    const again = insertRow(folder, file, 'Lines', guard, [
      [column('Stage (key)'), 'yard'],
      ...['Total', 'Fee', 'Direct cost'].map((head): [number, number] => [column(head), 1000]),
    ]);
    const read = new ExcelJS.Workbook();
    await read.xlsx.readFile(again);
    const total = read.getWorksheet('Cover')?.getCell('B7').result;
    const before = paper.sheets[0]?.cells.find(cell => cell.row === 7 && cell.column === 2)?.content;
    expect(read.getWorksheet('Cover')?.getCell('B5').result).toBe('OK');
    expect(
      before?.kind === 'formula' && typeof before.result === 'number' && before.result + 1000,
    ).toBeCloseTo(Number(total), 2);
  }, 120_000);
});
