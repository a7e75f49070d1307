/** A cell of a CSV file: text, a number with its decimals, or nothing known. */
export type CsvCell = string | { readonly value: number; readonly decimals?: number } | undefined;

/** Read by spreadsheets as the sign that a file is UTF-8. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * A CSV file: UTF-8 with its mark, CR and LF after each row, quotes where a text needs them. Text that a spreadsheet
 * would take for a formula gets an apostrophe before it; numbers are written as they are, credits too.
 * @param rows the heading row first; an absent figure is an empty cell.
 * @source RFC 4180, section 2; OWASP, CSV Injection (characters that start a formula).
 * @example csvFile([['Title'], ['=1+1']]) // a cell that reads '=1+1 and computes nothing
 */
export function csvFile(rows: readonly (readonly CsvCell[])[]): string {
  return BYTE_ORDER_MARK + rows.map(row => row.map(written).join(',') + '\r\n').join('');
}

function written(cell: CsvCell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return quoted(harmless(cell));
  return cell.decimals === undefined ? String(cell.value) : cell.value.toFixed(cell.decimals);
}

/** Signs that begin a formula in a spreadsheet, their full-width forms, and what a spreadsheet skips before one. */
const FORMULA_START = /^[\s\p{Cc}\p{Cf}'"]*[=+\-@|%\uff1d\uff0b\uff0d\uff20]/u;

function harmless(words: string): string {
  const plain = words.replace(/\p{Cc}/gu, character => (/[\t\r\n]/.test(character) ? character : ''));
  return FORMULA_START.test(plain) || /^[\t\r\n]/.test(plain) ? `'${plain}` : plain;
}

function quoted(words: string): string {
  return /[",\r\n;\t]|^\s|\s$/.test(words) ? `"${words.replaceAll('"', '""')}"` : words;
}
