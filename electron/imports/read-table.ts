import ExcelJS from 'exceljs';
import Papa from 'papaparse';
import type { TextTable } from '../../core/project';

/** The rows of a CSV file as text cells; comma, semicolon or tab, found by itself. Nothing is turned into a number. */
export function readCsv(text: string): TextTable {
  return Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false }).data;
}

/** The rows of the first worksheet, or of the one named, as text cells as they are shown. */
export async function readXlsx(bytes: ArrayBuffer, sheetName?: string): Promise<TextTable> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes);
  const sheet = sheetName === undefined ? workbook.worksheets[0] : workbook.getWorksheet(sheetName);
  if (sheet === undefined) return [];
  return Array.from({ length: sheet.rowCount }, (_, i) => {
    const row = sheet.getRow(i + 1);
    return Array.from({ length: sheet.columnCount }, (_cell, j) => textOf(row.getCell(j + 1)));
  });
}

function textOf(cell: ExcelJS.Cell): string {
  if (cell.value instanceof Date) return cell.value.toISOString().slice(0, 10);
  return cell.text;
}
