import type { Finding } from '../../base';
import { checkGiven } from '../check';
import type { PlacedGiven } from '../given-rules';
import type { Imported } from './figures';

/** The rows whose figures can be meant; one beyond its limits is left out with a finding, and the others are taken. */
export function withinLimits<R>(read: Imported<R>, givens: (row: R) => readonly PlacedGiven[]): Imported<R> {
  const rows = read.rows.map(row => ({ row, wrong: givens(row).flatMap(checkGiven) }));
  return {
    rows: rows.flatMap(({ row, wrong }) => (wrong.length === 0 ? [row] : [])),
    findings: [...read.findings, ...rows.flatMap(({ wrong }) => wrong.slice(0, 1).map(leftOut))],
  };
}

function leftOut({ place, message }: Finding): Finding {
  return {
    code: 'imports/beyond-limits',
    weight: 'warns',
    place,
    message,
    meaning: 'It is left out; the other rows are taken.',
    remedy: 'Correct it in the file, or enter it by hand.',
  };
}
