import { spawnSync } from 'node:child_process';
import type { PrintedWorkbook } from '../workbook';
import type { BenchRow } from './row';

const isPrinted = (value: unknown): value is PrintedWorkbook =>
  typeof value === 'object' && value !== null && 'bareSeconds' in value && 'megabytes' in value;

/** The workbook of 5,000 lines beside the bare writer. */
export function workbookRows(): BenchRow[] {
  const run = spawnSync(process.execPath, [process.argv[1] ?? '', 'workbook', '--json'], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  const printed: unknown = JSON.parse(run.stdout);
  if (!isPrinted(printed)) throw new Error('the bench of the workbook printed something else');
  const { lines, cells, bareSeconds, seconds, megabytes, wholeMegabytes } = printed;
  return [
    {
      name: `workbook of ${lines} lines`,
      figure: seconds,
      unit: 's',
      peer: 'exceljs bare',
      peerFigure: bareSeconds,
      ratio: { words: 'times its time', value: seconds / bareSeconds },
      said: `${cells} cells, processor time of both`,
    },
    { name: `memory of the workbook of ${lines} lines`, figure: megabytes, unit: 'MB' },
    { name: `memory of its estimate and writing`, figure: wholeMegabytes, unit: 'MB' },
  ];
}
