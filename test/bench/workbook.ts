/**
 * How long the workbook of 5,000 lines takes to write, against the bare writer given the same values and formulas, and
 * how much memory that needs. The cells are made in one process and written in another, one for each writer, so that
 * neither the estimate nor the other writer is counted with it: what is told is the most that the process held, its
 * cells included.
 *
 *     npm run bench -- workbook [LINES]
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import ExcelJS from 'exceljs';
import { z } from 'zod';
import { evaluate } from '../../core/evaluation';
import { estimateWorkbook, type PaperSheet, type PaperWorkbook } from '../../core/papers';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { TODAY, largeProject } from './large-project';

const LINES = 5000;
/** What one process says of its part. */
const FIGURES = z.record(z.string(), z.number());
type Figures = z.infer<typeof FIGURES>;

/** The same cells without any look, check or chart. */
async function bare(paper: PaperWorkbook): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  for (const { name, cells } of paper.sheets) {
    const sheet = book.addWorksheet(name);
    for (const { row, column, content } of cells) {
      const cell = sheet.getCell(row, column);
      if (content.kind === 'formula') cell.value = { formula: content.formula, result: content.result };
      else if (content.kind === 'date') cell.value = new Date(`${content.iso}T00:00:00Z`);
      else cell.value = 'text' in content ? content.text : content.value;
    }
  }
  return Buffer.from(await book.xlsx.writeBuffer());
}

/** Makes the cells and leaves them in a folder, a file for each sheet. */
function made(folder: string, wanted: number): Figures {
  const evaluation = evaluate(largeProject(wanted), { today: TODAY, seed: 1, schedules: 1, upright: false });
  const evaluated = process.resourceUsage().maxRSS;
  const started = process.cpuUsage();
  const paper = estimateWorkbook(evaluation);
  if (paper === undefined) throw new Error('the large project has no estimate');
  const seconds = process.cpuUsage(started).user / 1e6;
  const { sheets, ...frame } = paper;
  writeFileSync(join(folder, 'frame'), serialize({ ...frame, count: sheets.length }));
  sheets.forEach((sheet, i) => {
    writeFileSync(join(folder, `sheet-${i}`), serialize(sheet));
  });
  return {
    lines: evaluation.estimate?.work.rows.length ?? 0,
    cells: sheets.reduce((sum, sheet) => sum + sheet.cells.length, 0),
    seconds,
    evaluated: evaluated / 1024,
    memory: process.resourceUsage().maxRSS / 1024,
  };
}

function read(folder: string): PaperWorkbook {
  const frame: unknown = deserialize(readFileSync(join(folder, 'frame')));
  if (!isFrame(frame)) throw new Error('the frame of the workbook cannot be read');
  const sheets = Array.from({ length: frame.count }, (_, i) => {
    const sheet: unknown = deserialize(readFileSync(join(folder, `sheet-${i}`)));
    if (!isSheet(sheet)) throw new Error(`sheet ${i} of the workbook cannot be read`);
    return sheet;
  });
  return { ...frame, sheets };
}

function isFrame(value: unknown): value is Omit<PaperWorkbook, 'sheets'> & { readonly count: number } {
  return typeof value === 'object' && value !== null && 'count' in value && 'names' in value;
}

function isSheet(value: unknown): value is PaperSheet {
  return typeof value === 'object' && value !== null && 'cells' in value && 'widths' in value;
}

async function written(folder: string, write: (paper: PaperWorkbook) => Promise<Buffer>): Promise<Figures> {
  const paper = read(folder);
  const held = process.resourceUsage().maxRSS / 1024;
  const [clock, work] = [performance.now(), process.cpuUsage()];
  const { length } = await write(paper);
  return {
    seconds: (performance.now() - clock) / 1000,
    work: process.cpuUsage(work).user / 1e6,
    held,
    memory: process.resourceUsage().maxRSS / 1024,
    bytes: length,
  };
}

/** The parts, each run in a process of its own. */
const PARTS: Readonly<Record<string, (folder: string, lines: number) => Figures | Promise<Figures>>> = {
  make: made,
  bare: folder => written(folder, bare),
  ours: folder => written(folder, writeWorkbook),
};

function inOwnProcess(part: string, folder: string, lines: number): Figures {
  const args = [process.argv[1] ?? '', 'workbook', part, folder, String(lines)];
  return FIGURES.parse(JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' })));
}

export async function workbook([
  first = String(LINES),
  folder = '',
  lines = '',
]: readonly string[]): Promise<number> {
  const part = PARTS[first];
  if (part !== undefined) {
    process.stdout.write(JSON.stringify(await part(folder, Number(lines))));
    return 0;
  }
  const own = mkdtempSync(join(tmpdir(), 'workbook-bench-'));
  try {
    const cells = inOwnProcess('make', own, Number(first));
    const [plain, ours] = ['bare', 'ours'].map(name => inOwnProcess(name, own, Number(first)));
    if (plain === undefined || ours === undefined) throw new Error('a writer said nothing');
    process.stdout.write(told(cells, plain, ours));
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
  return 0;
}

function told(cells: Figures, plain: Figures, ours: Figures): string {
  const of = (figures: Figures, key: string, digits = 1) => (figures[key] ?? Number.NaN).toFixed(digits);
  const times = (key: string) => ((ours[key] ?? 0) / (plain[key] ?? 0)).toFixed(2);
  const writer = (name: string, figures: Figures) =>
    `${name}: ${of(figures, 'seconds')} s, ${of(figures, 'work')} s of processor time; the cells read in ${of(figures, 'held', 0)} MB, at most ${of(figures, 'memory', 0)} MB while writing; ${((figures['bytes'] ?? 0) / 2 ** 20).toFixed(1)} MB written`;
  return [
    `workbook of ${of(cells, 'lines', 0)} lines, ${of(cells, 'cells', 0)} cells, made ready in ${of(cells, 'seconds')} s of processor time`,
    `the estimate: at most ${of(cells, 'evaluated', 0)} MB; with the cells ${of(cells, 'memory', 0)} MB`,
    writer('bare writer', plain),
    writer('our writer', ours),
    `ours against bare: ${times('seconds')} times the time, ${times('work')} times the processor time`,
    '',
  ].join('\n');
}
