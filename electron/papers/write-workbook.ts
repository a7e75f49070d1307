import { PassThrough } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import ExcelJS from 'exceljs';
import {
  partsOf,
  type PaperCell,
  type PaperContent,
  type PaperSheet,
  type PaperWorkbook,
} from '../../core/papers';
import { forgetFormulas, packedUpTo } from './backlog';
import { CellLooks } from './cell-look';
import { withCharts } from './native-charts';
import { rowHeight } from './row-height';

/** Rows that are written before the packing of what is written gets its turn. */
const ROWS_AT_ONCE = 100;

/**
 * Writes a paper workbook as xlsx, row by row: what is written is packed and let go, so that memory holds a few rows
 * and not the whole book; large sheets come in parts. Every formula carries its result; dates are midnight UTC, whatever the time zone.
 */
export async function writeWorkbook(paper: PaperWorkbook): Promise<Buffer> {
  const day = utc(paper.date);
  const sink = new PassThrough();
  const packed = buffer(sink);
  const book = new ExcelJS.stream.xlsx.WorkbookWriter({
    stream: sink,
    useStyles: true,
    useSharedStrings: true,
    zip: { zlib: { level: 6 } },
  });
  book.creator = 'Reefwright';
  book.title = paper.title;
  book.created = day;
  book.modified = day;
  const looks = new CellLooks();
  for (const sheet of paper.sheets) await addSheet(book, sheet, paper, looks);
  for (const { name, range } of paper.names) book.definedNames.add(range, name);
  await book.commit();
  return withCharts(await packed, paper, day);
}

function utc(iso: string): Date {
  const [year, month, day] = iso.split('-').map(Number);
  return new Date(Date.UTC(year ?? 2000, (month ?? 1) - 1, day ?? 1));
}

async function addSheet(
  book: ExcelJS.Workbook,
  paper: PaperSheet,
  whole: PaperWorkbook,
  looks: CellLooks,
): Promise<void> {
  const sheet = book.addWorksheet(paper.name, {
    pageSetup: {
      orientation: paper.landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: pagesWide(paper),
      fitToHeight: 0,
      paperSize: 1 as never,
    },
    headerFooter: {
      oddHeader: `&L${footText(whole.title)}&R${whole.date}`,
      oddFooter: '&L&A&CReefwright&RPage &P of &N',
    },
    ...(paper.headingRows > 0 ? { views: [{ state: 'frozen', ySplit: paper.headingRows, xSplit: 1 }] } : {}),
  });
  paper.widths.forEach((width, i) => {
    sheet.getColumn(i + 1).width = width;
  });
  if (paper.headingRows > 0) sheet.pageSetup.printTitlesRow = `1:${paper.headingRows}`;
  if (pagesWide(paper) > 1) sheet.pageSetup.printTitlesColumn = 'A:B';
  for (const range of paper.numberInputs ?? []) numbersOnly(sheet, range);
  for (const { range, words } of paper.choices ?? []) wordsOnly(sheet, range, words);
  await sheet.protect('', { formatColumns: true, formatRows: true, autoFilter: true, sort: true });
  let [rows, columns] = [Math.max(1, (paper.charts ?? []).length * 23 + 2), Math.max(1, paper.widths.length)];
  for (const part of partsOf(paper)) {
    const cells = part();
    await addRows(sheet, cells, paper.widths, looks);
    for (const { row, column } of cells) [rows, columns] = [Math.max(rows, row), Math.max(columns, column)];
  }
  // The writer puts a $ before each of the two cells; that of the rows is ours.
  const last = sheet.getColumn(paper.printColumns ?? columns).letter;
  sheet.pageSetup.printArea = `A$1:${last}$${rows}`;
  sheet.commit();
}

/** Cells of whole rows, a row at a time from the top, each row let go once it is written. */
async function addRows(
  sheet: ExcelJS.Worksheet,
  cells: readonly PaperCell[],
  widths: readonly number[],
  looks: CellLooks,
): Promise<void> {
  const figures = figuresBelowHeadings(cells);
  let written = 0;
  for (const { number, cells: inRow } of byRow(cells)) {
    const row = sheet.getRow(number);
    const height = rowHeight(inRow, widths);
    if (height !== undefined) row.height = height;
    for (const cell of inRow) {
      const target = row.getCell(cell.column);
      target.value = valueOf(cell.content);
      target.style = looks.of(cell, isHead(cell) && standsOverFigures(cell, figures));
    }
    row.commit();
    written++;
    if (written % ROWS_AT_ONCE === 0) {
      forgetFormulas(sheet);
      await packedUpTo(sheet);
    }
  }
}

/** Cells by the row they stand in, from the top. */
function byRow(cells: readonly PaperCell[]): { number: number; cells: PaperCell[] }[] {
  const rows = new Map<number, PaperCell[]>();
  for (const cell of cells) {
    const row = rows.get(cell.row);
    if (row === undefined) rows.set(cell.row, [cell]);
    else row.push(cell);
  }
  return [...rows].sort(([a], [b]) => a - b).map(([number, inRow]) => ({ number, cells: inRow }));
}

/** A header may not hold the sign that begins its own codes. */
function footText(words: string): string {
  return words.replaceAll('&', '&&').slice(0, 120);
}

/** The widest a sheet may be on one page and still be read, in characters. */
const READABLE = 180;

/** How many pages beside each other a sheet takes. */
function pagesWide({ widths, printColumns = widths.length }: PaperSheet): number {
  const printed = widths.slice(0, printColumns);
  return Math.max(1, Math.ceil(printed.reduce((sum, width) => sum + width, 0) / READABLE));
}

/** Headings, and the units below them. */
function isHead({ style }: PaperCell): boolean {
  return style === 'heading' || style === 'unit';
}

/** How far below a heading its first figure may stand: a row of units may be between. */
const FIGURES_BELOW = [1, 2] as const;

/** Rows and columns in which figures or dates stand, of the rows next below headings. */
function figuresBelowHeadings(cells: readonly PaperCell[]): ReadonlySet<string> {
  const below = new Set(
    cells.flatMap(cell => (isHead(cell) ? FIGURES_BELOW.map(more => cell.row + more) : [])),
  );
  const figures = new Set<string>();
  for (const { row, column, content } of cells) {
    if (!below.has(row)) continue;
    const isFigure =
      content.kind === 'number' ||
      content.kind === 'money' ||
      content.kind === 'date' ||
      (content.kind === 'formula' && typeof content.result === 'number');
    if (isFigure) figures.add(`${row} ${column}`);
  }
  return figures;
}

/** A heading stands on the side of what is below it. */
function standsOverFigures({ row, column }: PaperCell, figures: ReadonlySet<string>): boolean {
  return FIGURES_BELOW.some(below => figures.has(`${row + below} ${column}`));
}

/** The list of rules for input that the writer keeps and its types leave out. */
interface InputRules {
  readonly dataValidations: { add(range: string, rule: ExcelJS.DataValidation): void };
}

function numbersOnly(sheet: ExcelJS.Worksheet & Partial<InputRules>, range: string): void {
  sheet.dataValidations?.add(range, {
    type: 'decimal',
    operator: 'between',
    formulae: [-1e12, 1e12],
    allowBlank: true,
    showErrorMessage: true,
    errorTitle: 'A number is needed',
    error: 'Type a plain number in the unit of the column head, without the unit and without text.',
  });
}

function wordsOnly(
  sheet: ExcelJS.Worksheet & Partial<InputRules>,
  range: string,
  words: readonly string[],
): void {
  sheet.dataValidations?.add(range, {
    type: 'list',
    formulae: [`"${words.join(',')}"`],
    allowBlank: true,
    showErrorMessage: true,
    errorTitle: 'One of the words of the list is needed',
    error: words.join(', '),
  });
}

/** What stands in a cell; nothing for an empty text. */
function valueOf(content: PaperContent): ExcelJS.CellValue {
  switch (content.kind) {
    case 'text':
    case 'open':
      return content.text === '' ? null : content.text;
    case 'date':
      return utc(content.iso);
    case 'money':
    case 'number':
      return finite(content.value);
    case 'formula': {
      const { formula, result } = content;
      return { formula, result: typeof result === 'number' ? finite(result) : result };
    }
  }
}

/** A number that a workbook can hold. @throws Error for anything else: a fault of the program, caught before a file is written. */
function finite(value: number): number {
  if (!Number.isFinite(value)) throw new Error('a figure of the workbook is not a finite number');
  return value;
}
