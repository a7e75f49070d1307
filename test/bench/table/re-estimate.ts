import { spawnSync } from 'node:child_process';
import type { Times } from '../times';
import type { BenchRow } from './row';

interface Printed {
  readonly rows: readonly Times[];
  readonly growthOfTheSheetsAt16Times: string;
}

const isPrinted = (value: unknown): value is Printed =>
  typeof value === 'object' && value !== null && 'rows' in value && 'growthOfTheSheetsAt16Times' in value;

function estimateBench(...words: string[]): Printed {
  const run = spawnSync(process.execPath, [process.argv[1] ?? '', 'estimate', '--json', ...words], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  const printed: unknown = JSON.parse(run.stdout);
  if (!isPrinted(printed)) throw new Error('the bench of the estimate printed something else');
  return printed;
}

/** Both sheets at the size of the example and at four times it, the schedule held: the least of the runs, milliseconds. */
export function sheetMilliseconds(): [number, number] {
  const { rows } = estimateBench('--sheets-only');
  return [rows[0]?.least ?? Number.NaN, rows[1]?.least ?? Number.NaN];
}

/** A re-estimate after an edit that moves every line. */
export function reEstimateRows(): BenchRow[] {
  const { rows, growthOfTheSheetsAt16Times } = estimateBench();
  return [
    ...rows.map((times): BenchRow => ({
      name: times.name,
      figure: times.median,
      unit: 'ms',
      said: `median of ${times.runs}, p95 ${times.p95.toFixed(1)} ms`,
    })),
    {
      name: 'time of both sheets at 16 times the lines, over that at one',
      figure: Number(growthOfTheSheetsAt16Times),
      unit: 'times',
    },
  ];
}
