/**
 * How long the workbook of 5,000 lines takes to write, against the bare writer given the same values and formulas, and
 * how much memory that needs. The cells are made in one process and written in another, one for each writer, so that
 * neither the estimate nor the other writer is counted with it: what is told is the most that the process held. The cells
 * come in parts, as the program makes them. Beside it stands what all of it needs in one process.
 *
 *     npm run bench -- workbook [LINES] [--json]
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import ExcelJS from 'exceljs';
import { z } from 'zod';
import { evaluate, type Evaluation } from '../../core/evaluation';
import {
  estimateWorkbook,
  largeSheet,
  partsOf,
  type PaperCell,
  type PaperSheet,
  type PaperWorkbook,
} from '../../core/papers';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { TODAY, largeProject } from './large-project';

const LINES = 5000;
/** What one process says of its part. */
const FIGURES = z.record(z.string(), z.number());
type Figures = z.infer<typeof FIGURES>;

/** The same cells without any look, check or chart. */
async function bare(paper: PaperWorkbook): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  for (const paperSheet of paper.sheets) {
    const sheet = book.addWorksheet(paperSheet.name);
    for (const part of partsOf(paperSheet))
      for (const { row, column, content } of part()) {
        const cell = sheet.getCell(row, column);
        if (content.kind === 'formula') cell.value = { formula: content.formula, result: content.result };
        else if (content.kind === 'date') cell.value = new Date(`${content.iso}T00:00:00Z`);
        else cell.value = 'text' in content ? content.text : content.value;
      }
  }
  return Buffer.from(await book.xlsx.writeBuffer());
}

function evaluated(lines: number): Evaluation {
  return evaluate(largeProject(lines), { today: TODAY, seed: 1, schedules: 1, upright: false });
}

function paperOf(evaluation: Evaluation): PaperWorkbook {
  const paper = estimateWorkbook(evaluation);
  if (paper === undefined) throw new Error('the large project has no estimate');
  return paper;
}

/** Makes the cells and leaves them in a folder, a file for each part of a sheet. */
function made(folder: string, wanted: number): Figures {
  const evaluation = evaluated(wanted);
  const evaluatedIn = process.resourceUsage();
  const started = process.cpuUsage();
  const { sheets, ...frame } = paperOf(evaluation);
  let [count, seconds] = [0, process.cpuUsage(started).user / 1e6];
  const frames = sheets.map((sheet, i) => {
    const parts = partsOf(sheet);
    parts.forEach((part, j) => {
      const before = process.cpuUsage();
      const cells = part();
      seconds += process.cpuUsage(before).user / 1e6;
      count += cells.length;
      writeFileSync(join(folder, `cells-${i}-${j}`), serialize(cells));
    });
    return { ...sheet, cells: [], parts: parts.length };
  });
  writeFileSync(join(folder, 'frame'), serialize({ ...frame, sheets: frames }));
  return {
    lines: evaluation.estimate?.work.rows.length ?? 0,
    cells: count,
    seconds,
    estimating: evaluatedIn.userCPUTime / 1e6,
    evaluated: evaluatedIn.maxRSS / 1024,
  };
}

/** The workbook from the folder; the cells of a part are read when they are asked for. */
function read(folder: string): PaperWorkbook {
  const frame: unknown = deserialize(readFileSync(join(folder, 'frame')));
  if (!isFrame(frame)) throw new Error('the frame of the workbook cannot be read');
  const partOf = (sheet: number, part: number) => () => {
    const cells: unknown = deserialize(readFileSync(join(folder, `cells-${sheet}-${part}`)));
    if (!isCells(cells)) throw new Error(`part ${part} of sheet ${sheet} cannot be read`);
    return cells;
  };
  const sheets = frame.sheets.map(({ parts, widths, cells: _cells, ...rest }, i) =>
    largeSheet(
      rest,
      Array.from({ length: parts }, (_, j) => partOf(i, j)),
      () => widths,
    ),
  );
  return { ...frame, sheets };
}

type Frame = Omit<PaperWorkbook, 'sheets'> & {
  readonly sheets: readonly (PaperSheet & { readonly parts: number })[];
};

function isFrame(value: unknown): value is Frame {
  return typeof value === 'object' && value !== null && 'sheets' in value && 'names' in value;
}

function isCells(value: unknown): value is readonly PaperCell[] {
  return Array.isArray(value);
}

/** All in one process, as the program does it: the estimate, the cells and the writing. */
async function whole(_folder: string, lines: number): Promise<Figures> {
  const { length } = await writeWorkbook(paperOf(evaluated(lines)));
  return { memory: process.resourceUsage().maxRSS / 1024, bytes: length };
}

async function written(folder: string, write: (paper: PaperWorkbook) => Promise<Buffer>): Promise<Figures> {
  const paper = read(folder);
  const [clock, work] = [performance.now(), process.cpuUsage()];
  const { length } = await write(paper);
  return {
    seconds: (performance.now() - clock) / 1000,
    work: process.cpuUsage(work).user / 1e6,
    memory: process.resourceUsage().maxRSS / 1024,
    bytes: length,
  };
}

/** The parts, each run in a process of its own. */
const PARTS: Readonly<Record<string, (folder: string, lines: number) => Figures | Promise<Figures>>> = {
  make: made,
  bare: folder => written(folder, bare),
  ours: folder => written(folder, writeWorkbook),
  whole,
};

function inOwnProcess(part: string, folder: string, lines: number): Figures {
  const args = [process.argv[1] ?? '', 'workbook', part, folder, String(lines)];
  return FIGURES.parse(JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' })));
}

/** `--json` prints what the table of benches reads instead of the text. */
export async function workbook(args: readonly string[]): Promise<number> {
  const [first = String(LINES), folder = '', lines = ''] = args.filter(arg => arg !== '--json');
  const part = PARTS[first];
  if (part !== undefined) {
    process.stdout.write(JSON.stringify(await part(folder, Number(lines))));
    return 0;
  }
  const own = mkdtempSync(join(tmpdir(), 'workbook-bench-'));
  try {
    const cells = inOwnProcess('make', own, Number(first));
    const [plain, ours] = ['bare', 'ours'].map(name => inOwnProcess(name, own, Number(first)));
    const all = inOwnProcess('whole', own, Number(first));
    if (plain === undefined || ours === undefined) throw new Error('a writer said nothing');
    process.stdout.write(
      args.includes('--json')
        ? `${JSON.stringify(printed(cells, plain, ours, all))}\n`
        : told(cells, plain, ours, all),
    );
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
  return 0;
}

/** What the table of benches reads: seconds of processor time, the most memory that writing held, and with the estimate. */
export interface PrintedWorkbook {
  readonly lines: number;
  readonly cells: number;
  readonly bareSeconds: number;
  readonly seconds: number;
  readonly megabytes: number;
  readonly wholeMegabytes: number;
}

function printed(cells: Figures, plain: Figures, ours: Figures, all: Figures): PrintedWorkbook {
  const of = (figures: Figures, key: string) => {
    const value = figures[key];
    if (value === undefined) throw new Error(`the bench of the workbook has no ${key}`);
    return value;
  };
  return {
    lines: of(cells, 'lines'),
    cells: of(cells, 'cells'),
    bareSeconds: of(plain, 'work'),
    seconds: of(ours, 'work'),
    megabytes: of(ours, 'memory'),
    wholeMegabytes: of(all, 'memory'),
  };
}

function told(cells: Figures, plain: Figures, ours: Figures, all: Figures): string {
  const of = (figures: Figures, key: string, digits = 1) => (figures[key] ?? Number.NaN).toFixed(digits);
  const times = (key: string) => ((ours[key] ?? 0) / (plain[key] ?? 0)).toFixed(2);
  const writer = (name: string, figures: Figures) =>
    `${name}: ${of(figures, 'seconds')} s, ${of(figures, 'work')} s of processor time; at most ${of(figures, 'memory', 0)} MB, a part of the cells included; ${((figures['bytes'] ?? 0) / 2 ** 20).toFixed(1)} MB written`;
  return [
    `workbook of ${of(cells, 'lines', 0)} lines, ${of(cells, 'cells', 0)} cells, made ready in ${of(cells, 'seconds')} s of processor time`,
    `the estimate: ${of(cells, 'estimating')} s of processor time, at most ${of(cells, 'evaluated', 0)} MB; estimate, cells and writing in one process: at most ${of(all, 'memory', 0)} MB`,
    writer('bare writer', plain),
    writer('our writer', ours),
    `ours against bare: ${times('seconds')} times the time, ${times('work')} times the processor time`,
    '',
  ].join('\n');
}
