import ExcelJS from 'exceljs';
import type { FileCell, TypedContent } from '../../core/papers';
import { unpackedSize } from './zip-directory';

/** Limits of a workbook that comes back: one of ours with 5,000 lines stays far below each. */
export const MOST_BYTES = 30 * 2 ** 20;
const MOST_UNPACKED = 400 * 2 ** 20;
const MOST_PARTS = 1000;
const MOST_CELLS = 2_000_000;

/** The file is not a workbook that is read, with what is so and what to do. */
export class NotAWorkbook extends Error {
  override readonly name = 'NotAWorkbook';
}

/**
 * Every cell of a workbook that is not empty, as it was saved: of a formula its text and what it came to. Nothing is
 * calculated, no link is followed. The directory of the zip is looked at before anything is unpacked.
 * @throws NotAWorkbook for anything else, and for what is too large.
 */
export async function readWorkbook(bytes: Uint8Array): Promise<FileCell[]> {
  if (bytes.byteLength > MOST_BYTES) throw new NotAWorkbook('it is larger than any workbook of this program');
  const { parts, unpacked } = unpackedSize(bytes) ?? {};
  if (parts === undefined || unpacked === undefined)
    throw new NotAWorkbook('it is not a workbook in xlsx form');
  if (parts > MOST_PARTS || unpacked > MOST_UNPACKED)
    throw new NotAWorkbook('it unpacks to more than a workbook holds');
  const book = new ExcelJS.Workbook();
  try {
    await book.xlsx.load(bytes.slice().buffer);
  } catch (cause) {
    throw new NotAWorkbook('it is damaged, or not a workbook in xlsx form', { cause });
  }
  return cellsOf(book);
}

/** From the reader: the cells, or why the file is not read. */
export type ReaderMessage = { readonly cells: readonly FileCell[] } | { readonly refused: string };

/** The cells of a workbook, or in words why it is none that is read. */
export async function readOrRefuse(bytes: Uint8Array): Promise<ReaderMessage> {
  try {
    return { cells: await readWorkbook(bytes) };
  } catch (error) {
    if (!(error instanceof NotAWorkbook)) throw error;
    return { refused: error.message };
  }
}

function cellsOf(book: ExcelJS.Workbook): FileCell[] {
  const cells: FileCell[] = [];
  book.eachSheet(sheet => {
    sheet.eachRow((row, number) => {
      row.eachCell((cell, column) => {
        if (cells.length >= MOST_CELLS)
          throw new NotAWorkbook('it has more cells than a workbook of this program');
        const formula = formulaOf(cell);
        cells.push({
          sheet: sheet.name,
          row: number,
          column,
          content: contentOf(formula === undefined ? cell.value : cell.result),
          ...(formula !== undefined && { formula }),
        });
      });
    });
  });
  return cells;
}

/** The formula of a cell; a cell without one, or with an empty one, has none. */
function formulaOf(cell: ExcelJS.Cell): string | undefined {
  const formula: string | undefined = cell.formula;
  return formula === '' ? undefined : formula;
}

function contentOf(value: unknown): TypedContent {
  if (value === null || value === undefined || value === '') return { kind: 'blank' };
  if (typeof value === 'number') return { kind: 'number', value };
  if (typeof value === 'string') return { kind: 'text', text: value };
  if (typeof value === 'boolean') return { kind: 'other', words: value ? 'TRUE' : 'FALSE' };
  if (value instanceof Date)
    return Number.isNaN(value.getTime())
      ? { kind: 'other', words: 'a date that is none' }
      : { kind: 'date', iso: value.toISOString().slice(0, 10) };
  return objectContent(value);
}

/** Rich text and links are read as their words; an error is named. */
function objectContent(value: unknown): TypedContent {
  if (typeof value !== 'object' || value === null) return { kind: 'other', words: 'something unknown' };
  if ('error' in value) return { kind: 'other', words: `the error ${String(value.error)}` };
  if ('richText' in value && Array.isArray(value.richText)) {
    const parts: unknown[] = value.richText;
    const words = parts.map(part =>
      typeof part === 'object' && part !== null && 'text' in part ? String(part.text) : '',
    );
    return { kind: 'text', text: words.join('') };
  }
  return 'text' in value ? contentOf(value.text) : { kind: 'other', words: 'something unknown' };
}
