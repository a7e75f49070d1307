/**
 * `npm run bench`: every leg in a process of its own, one table, and the same as JSON. Each figure stands beside its peer
 * where there is one, measured in the same run.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { bundleRows } from './bundle';
import { memoryRows } from './memory';
import { openingRows } from './opening';
import { riskRows, uprightRows } from './others';
import { recalculationRows } from './recalculation';
import { tableText, type BenchRow } from './row';
import { scheduleRows } from './schedule';
import { reEstimateRows, sheetMilliseconds } from './re-estimate';
import { workbookRows } from './workbook';

const OUT = 'dist/bench/table.json';

const LEGS: Readonly<Record<string, () => BenchRow[] | Promise<BenchRow[]>>> = {
  're-estimate': reEstimateRows,
  recalculation: () => recalculationRows(sheetMilliseconds()),
  schedule: scheduleRows,
  risk: riskRows,
  upright: uprightRows,
  workbook: workbookRows,
  opening: openingRows,
  memory: memoryRows,
  bundle: bundleRows,
};

const isRows = (value: unknown): value is BenchRow[] => Array.isArray(value);

/** Runs one leg in a process of its own, so that none inherits another's memory or warmed code. */
function legApart(leg: string): BenchRow[] {
  const run = spawnSync(process.execPath, [process.argv[1] ?? '', 'leg', leg], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  const last = run.stdout.trim().split('\n').at(-1) ?? '';
  if (run.status !== 0)
    return [{ name: leg, unit: '', said: `did not run: ${run.stderr.trim().slice(-300)}` }];
  const rows: unknown = JSON.parse(last);
  return isRows(rows) ? rows : [];
}

/** One leg alone, its rows as JSON. */
export async function leg([name = '']: readonly string[]): Promise<number> {
  const make = LEGS[name];
  if (make === undefined) return 2;
  process.stdout.write(`${JSON.stringify(await make())}\n`);
  return 0;
}

/** All legs. `--json` prints the JSON instead of the table; it is written to dist/bench/table.json either way. */
export function table(args: readonly string[]): Promise<number> {
  const asJson = args.includes('--json');
  const all: BenchRow[] = [];
  for (const name of Object.keys(LEGS)) {
    const rows = legApart(name);
    all.push(...rows);
    if (!asJson) process.stdout.write(`${name}\n${tableText(rows)}\n\n`);
  }
  mkdirSync(dirname(OUT), { recursive: true });
  const text = JSON.stringify(
    { measured: new Date().toISOString(), node: process.version, rows: all },
    undefined,
    2,
  );
  writeFileSync(OUT, `${text}\n`);
  process.stdout.write(asJson ? `${text}\n` : `Written to ${OUT}.\n`);
  return Promise.resolve(all.some(row => row.unit === '') ? 1 : 0);
}
