import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { evaluate } from '../../../core/evaluation';
import { estimateWorkbook } from '../../../core/papers';
import { writeWorkbook } from '../../../electron/papers/write-workbook';
import { largeProject, exampleProject, TODAY } from '../large-project';
import type { BenchRow } from './row';

const RUNS = 5;

/** The modes of LibreOffice on loading a workbook: reckon all formulas again, or none. */
const MODES = { always: 0, never: 1 } as const;

const profileText = (mode: number) => `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>${mode}</value></prop></item>
</oor:items>`;

/**
 * Milliseconds that LibreOffice takes to open the workbook, reckon it or not, and write its first sheet as text: the least
 * of some runs, as differences of times are wanted and whatever else the machine does can only add.
 */
function opened(folder: string, file: string, mode: keyof typeof MODES): number {
  const user = join(folder, mode, 'user');
  mkdirSync(user, { recursive: true });
  writeFileSync(join(user, 'registrymodifications.xcu'), profileText(MODES[mode]));
  const words = [`-env:UserInstallation=file://${join(folder, mode)}`, '--headless', '--norestore'];
  const run = () => {
    const started = performance.now();
    spawnSync('soffice', [...words, '--convert-to', 'csv', '--outdir', join(folder, 'out'), file]);
    return performance.now() - started;
  };
  run();
  return Math.min(...Array.from({ length: RUNS }, run));
}

interface Sized {
  readonly lines: number;
  readonly formulas: number;
  readonly always: number;
  readonly never: number;
}

async function sized(folder: string, times: number): Promise<Sized> {
  const one = exampleProject();
  const options = { today: TODAY, seed: 1, schedules: 1, upright: false } as const;
  const lines = times * (evaluate(one, options).estimate?.items.length ?? 0);
  const paper = estimateWorkbook(evaluate(times === 1 ? one : largeProject(lines), options));
  if (paper === undefined) throw new Error('the example has no estimate');
  const formulas = paper.sheets.reduce(
    (sum, sheet) => sum + sheet.cells.filter(cell => cell.content.kind === 'formula').length,
    0,
  );
  const file = join(folder, `lines-${lines}.xlsx`);
  writeFileSync(file, await writeWorkbook(paper));
  return { lines, formulas, always: opened(folder, file, 'always'), never: opened(folder, file, 'never') };
}

/**
 * LibreOffice reckoning the workbook of the example and of the example four times over, and the sheets of the engine
 * doing the same: the difference of the two sizes takes the start of the program out of both.
 * @param sheetMilliseconds the engine's least times for both sheets at the two sizes, the schedule held
 */
export async function recalculationRows(sheetMilliseconds: readonly [number, number]): Promise<BenchRow[]> {
  const name = 'reckoning a formula, beyond the start';
  if (spawnSync('soffice', ['--version']).status !== 0)
    return [{ name, unit: 'microseconds', said: 'LibreOffice is not on this machine' }];
  const folder = mkdtempSync(join(tmpdir(), 'recalculation-'));
  try {
    const [small, large] = [await sized(folder, 1), await sized(folder, 4)];
    const formulas = large.formulas - small.formulas;
    const ours = (1000 * (sheetMilliseconds[1] - sheetMilliseconds[0])) / formulas;
    const opening = (1000 * (large.always - small.always)) / formulas;
    const reckoning = (1000 * (large.always - large.never - (small.always - small.never))) / formulas;
    const said = `${small.lines} and ${large.lines} lines, ${small.formulas} and ${large.formulas} formulas, the least of ${RUNS} runs`;
    const row = (peer: string, peerFigure: number): BenchRow => ({
      name,
      figure: ours,
      unit: 'microseconds',
      peer,
      ...(peerFigure > 0
        ? { peerFigure, ratio: { words: 'times faster', value: peerFigure / ours }, said }
        : { said: `${said}; the difference is less than what the runs differ by` }),
    });
    return [
      row('LibreOffice, reading and reckoning', opening),
      row('LibreOffice, reckoning alone', reckoning),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
