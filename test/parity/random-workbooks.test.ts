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

/** Random projects: 30 when the long run is asked for. */
const PROJECTS = process.env['REEFWRIGHT_LONG'] === '1' ? 30 : 2;
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

/** Cells of a read workbook that are not what the paper says: money to the cent, other numbers to what is printed. */
async function differing(file: string, paper: PaperWorkbook): Promise<{ wrong: string[]; compared: number }> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const wrong: string[] = [];
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
  return { wrong, compared };
}

describe.skipIf(findSoffice() === undefined)('workbooks of drawn projects', () => {
  test(`LibreOffice recalculates every cell of ${PROJECTS} projects to what the program says, every cached result planted wrong; none is lost on the way to ODS and back`, async () => {
    const folder = workFolder();
    const papers = Array.from({ length: PROJECTS }, (_, i) => drawnPaper(i + 1));
    const files: string[] = [];
    for (const [i, paper] of papers.entries()) {
      const file = join(folder, `drawn-${i}.xlsx`);
      writeFileSync(file, await writeWorkbook(spoilt(paper)));
      files.push(file);
    }
    const again = recalculate(folder, files);
    for (const [i, paper] of papers.entries()) {
      const { wrong, compared } = await differing(again[i] ?? '', paper);
      expect(wrong.slice(0, 10), paper.title).toEqual([]);
      expect(compared).toBeGreaterThan(15_000);
    }
    const [first] = papers;
    if (first === undefined) throw new Error('one project was drawn');
    const back = convert(folder, 'xlsx', convert(folder, 'ods', files.slice(0, 1), 'ods'), 'back');
    expect((await differing(back[0] ?? '', first)).wrong.slice(0, 10)).toEqual([]);
    const spoiltRead = await differing(files[0] ?? '', first);
    expect(spoiltRead.wrong.length).toBeGreaterThan(5000);
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
