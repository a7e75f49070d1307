import { readFileSync } from 'node:fs';

/** What is known of an instance. */
export interface KnownBounds {
  readonly instance: string;
  /** Length of the longest path; absent in sets with maximum lags. */
  readonly criticalPath?: number;
  /** Best known lower bound and finish; absent when no schedule exists. */
  readonly lower?: number;
  readonly upper?: number;
}

/** Reads the rows of one set from a `bounds.csv`, whose first line names the columns. */
export function readBounds(path: string, set: string): KnownBounds[] {
  const [head = '', ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const columns = head.split(',');
  return lines
    .map(line => line.split(','))
    .filter(cells => cells[columns.indexOf('set')] === set)
    .map(cells => {
      const numberIn = (column: string): number | undefined => {
        const text = cells[columns.indexOf(column)] ?? '';
        return text === '' ? undefined : Number(text);
      };
      const criticalPath = numberIn('cpm_lb');
      const lower = numberIn('lb');
      const upper = numberIn('ub');
      return {
        instance: cells[columns.indexOf('instance')] ?? '',
        ...(criticalPath === undefined ? {} : { criticalPath }),
        ...(lower === undefined ? {} : { lower }),
        ...(upper === undefined ? {} : { upper }),
      };
    });
}
