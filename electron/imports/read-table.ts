import ExcelJS from 'exceljs';
import Papa from 'papaparse';
import type { TextTable } from '../../core/project';
import { HostProblem } from '../problem';
import { checkWorkbook } from './workbook-limits';

/** The rows of a CSV file as text cells; comma, semicolon or tab, found by itself. Nothing is turned into a number. */
export function readCsv(text: string): TextTable {
  const body = text.replace(/^\uFEFF/, '');
  // The line end after the last row is no row of one cell: in a short table of two columns it would mislead the guess.
  const { delimiter } = Papa.parse<string[]>(body.trimEnd(), { preview: 100 }).meta;
  return Papa.parse<string[]>(body, { delimiter, skipEmptyLines: false }).data;
}

/** The rows of a table file by its extension: CSV, TSV or text in UTF-8 or Windows-1252, or a workbook. */
export async function readTableFile(
  bytes: Uint8Array,
  extension: string,
  sheetName?: string,
): Promise<TextTable> {
  if (extension.toLowerCase() === '.xlsx') return readXlsx(new Uint8Array(bytes).buffer, sheetName);
  return readCsv(textIn(bytes));
}

function textIn(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** The rows of the first worksheet, or of the one named, as text cells as they are shown. */
export async function readXlsx(bytes: ArrayBuffer, sheetName?: string): Promise<TextTable> {
  await checkWorkbook(new Uint8Array(bytes));
  const workbook = new ExcelJS.Workbook();
  try {
    await workbook.xlsx.load(bytes);
  } catch {
    throw unreadable();
  }
  const sheet = sheetName === undefined ? workbook.worksheets[0] : workbook.getWorksheet(sheetName);
  if (sheet === undefined) return [];
  return Array.from({ length: sheet.rowCount }, (_, i) => {
    const row = sheet.getRow(i + 1);
    return Array.from({ length: sheet.columnCount }, (_cell, j) => textOf(row.getCell(j + 1)));
  });
}

function unreadable(): HostProblem {
  return new HostProblem({
    code: 'file/workbook-unreadable',
    message: 'The workbook could not be read: a part of it is not as the format wants it.',
    meaning: 'Nothing was read from it and nothing was changed.',
    remedy: 'Open it in a spreadsheet program, save it again as .xlsx or CSV, and choose that file.',
  });
}

function textOf(cell: ExcelJS.Cell): string {
  if (cell.value instanceof Date) return cell.value.toISOString().slice(0, 10);
  return cell.text;
}
