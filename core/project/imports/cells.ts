import { parseIsoDate, isoOf } from '../../calendar';
import type { ImportMapping } from './mapping';

const ORDERS = {
  'YYYY-MM-DD': /^(?<y>\d{4})-(?<m>\d{1,2})-(?<d>\d{1,2})$/,
  'MM/DD/YYYY': /^(?<m>\d{1,2})\/(?<d>\d{1,2})\/(?<y>\d{4})$/,
  'DD.MM.YYYY': /^(?<d>\d{1,2})\.(?<m>\d{1,2})\.(?<y>\d{4})$/,
};

/** A date cell as `YYYY-MM-DD`, read as the mapping says; none when it is not a date of the calendar. */
export function dateOf(cell: string, mapping: ImportMapping): string | undefined {
  const { y, m, d } = ORDERS[mapping.dates].exec(cell.trim())?.groups ?? {};
  if (y === undefined || m === undefined || d === undefined) return undefined;
  const iso = `${y}-${m.padStart(2, '0')}-${d.padStart(2, '0')}`;
  const day = parseIsoDate(iso);
  return day !== undefined && isoOf(day) === iso ? iso : undefined;
}

/** A cell with its number written with a point and without thousands; other text stays as it is. */
export function plainNumber(cell: string, mapping: ImportMapping): string {
  if (mapping.decimals === 'comma')
    return cell.replaceAll(/(?<=\d)\.(?=\d{3}\b)/g, '').replaceAll(/(?<=\d),(?=\d)/g, '.');
  return cell.replaceAll(/(?<=\d),(?=\d{3}\b)/g, '');
}

/** A plain decimal number of a cell; none when it is anything else. An empty cell is never zero. */
export function numberOf(cell: string | undefined, mapping: ImportMapping): string | undefined {
  const text = plainNumber((cell ?? '').trim().replace(/^\$/, ''), mapping);
  return /^-?\d{1,15}(\.\d{1,12})?$/.test(text) ? text : undefined;
}

/** A key from a title: lower-case words joined by hyphens. */
export function keyOf(title: string): string {
  const words = title.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  return words.join('-') || 'row';
}
