import ExcelJS from 'exceljs';
import type { PaperCell, PaperSheet, PaperStyle, PaperWorkbook } from '../../core/papers';
import { withCharts } from './native-charts';

/** Writes a paper workbook as xlsx. Every formula carries its result; dates are midnight UTC, whatever the time zone. */
export async function writeWorkbook(paper: PaperWorkbook): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const day = utc(paper.date);
  book.creator = 'Reefwright';
  book.title = paper.title;
  book.created = day;
  book.modified = day;
  book.calcProperties.fullCalcOnLoad = true;
  for (const sheet of paper.sheets) await addSheet(book, sheet, paper);
  for (const { name, range } of paper.names) book.definedNames.add(range, name);
  return withCharts(Buffer.from(await book.xlsx.writeBuffer()), paper, day);
}

function utc(iso: string): Date {
  const [year, month, day] = iso.split('-').map(Number);
  return new Date(Date.UTC(year ?? 2000, (month ?? 1) - 1, day ?? 1));
}

async function addSheet(book: ExcelJS.Workbook, paper: PaperSheet, whole: PaperWorkbook): Promise<void> {
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
  const figures = figurePlaces(paper);
  for (const cell of paper.cells) {
    const target = sheet.getCell(cell.row, cell.column);
    setCell(target, cell);
    if (cell.style === 'heading' && standsOverFigures(cell, figures))
      target.alignment = { wrapText: true, vertical: 'bottom', horizontal: 'right' };
  }
  printArea(sheet, paper);
  for (const range of paper.numberInputs ?? []) numbersOnly(sheet, range);
  for (const { range, words } of paper.choices ?? []) wordsOnly(sheet, range, words);
  await sheet.protect('', { formatColumns: true, formatRows: true, autoFilter: true, sort: true });
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

/** Rows and columns in which figures stand. */
function figurePlaces({ cells }: PaperSheet): ReadonlySet<string> {
  return new Set(
    cells.flatMap(({ row, column, content }) => {
      const isFigure =
        content.kind === 'number' ||
        content.kind === 'money' ||
        (content.kind === 'formula' && typeof content.result === 'number');
      return isFigure ? [`${row} ${column}`] : [];
    }),
  );
}

/** A heading stands on the side of what is below it. */
function standsOverFigures({ row, column }: PaperCell, figures: ReadonlySet<string>): boolean {
  return [1, 2].some(below => figures.has(`${row + below} ${column}`));
}

/** Prints what the sheet holds, charts included, and nothing beside it. */
function printArea(sheet: ExcelJS.Worksheet, { cells, widths, printColumns, charts = [] }: PaperSheet): void {
  const rows = cells.reduce((most, cell) => Math.max(most, cell.row), Math.max(1, charts.length * 23 + 2));
  const columns =
    printColumns ?? cells.reduce((most, cell) => Math.max(most, cell.column), Math.max(1, widths.length));
  sheet.pageSetup.printArea = `A1:${sheet.getColumn(columns).letter}${rows}`;
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

function setCell(target: ExcelJS.Cell, { content, style }: PaperCell): void {
  switch (content.kind) {
    case 'text':
    case 'open':
      target.value = content.text === '' ? null : content.text;
      break;
    case 'date':
      target.value = utc(content.iso);
      target.numFmt = 'yyyy-mm-dd';
      break;
    case 'money':
      target.value = finite(content.value);
      target.numFmt = MONEY;
      break;
    case 'number':
      target.value = finite(content.value);
      target.numFmt = numberFormat(content.decimals);
      break;
    case 'formula':
      target.value = {
        formula: content.formula,
        result: typeof content.result === 'number' ? finite(content.result) : content.result,
      };
      if (content.format !== 'text')
        target.numFmt = content.format === 'money' ? MONEY : numberFormat(content.decimals);
      break;
  }
  const role = content.kind === 'open' ? 'input' : 'role' in content ? content.role : 'result';
  if (role === 'input') target.protection = { locked: false };
  if (role !== 'result') target.fill = FILLS[role];
  setStyle(target, style ?? 'plain');
}

const MONEY = '#,##0.00;\u2212#,##0.00';

function numberFormat(decimals: number | undefined): string {
  return decimals === undefined
    ? 'General'
    : decimals === 0
      ? '#,##0'
      : `#,##0.${'0'.repeat(Math.min(decimals, 6))}`;
}

/** A number that a workbook can hold. @throws Error for anything else: a fault of the program, caught before a file is written. */
function finite(value: number): number {
  if (!Number.isFinite(value)) throw new Error('a figure of the workbook is not a finite number');
  return value;
}

const FILLS: Readonly<Record<'input' | 'schedule' | 'given', ExcelJS.Fill>> = {
  given: { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFF4F5F3' } },
  input: { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFF3F0E4' } },
  schedule: { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFE3ECEC' } },
};

const BARS: Readonly<Record<'bar' | 'bar-critical', ExcelJS.Fill>> = {
  bar: { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FF9FC1C6' } },
  'bar-critical': { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FF0E5662' } },
};

/** The typeface of every cell: one that each spreadsheet has or has a twin of. */
const FACE = 'Arial';

function setStyle(target: ExcelJS.Cell, style: PaperStyle): void {
  target.font = { name: FACE, size: 10 };
  switch (style) {
    case 'title':
      target.font = { name: FACE, size: 14, bold: true };
      break;
    case 'heading':
      target.font = { name: FACE, size: 10, bold: true };
      target.alignment = { wrapText: true, vertical: 'bottom' };
      target.border = { bottom: { style: 'thin' } };
      break;
    case 'unit':
      target.font = { name: FACE, size: 10, italic: true, color: { argb: 'FF5A6464' } };
      break;
    case 'total':
      target.font = { name: FACE, size: 10, bold: true };
      break;
    case 'note':
      target.font = { name: FACE, size: 10, italic: true };
      break;
    case 'caution':
      target.font = { name: FACE, size: 10, bold: true, color: { argb: 'FF8A3A00' } };
      break;
    case 'words':
      target.alignment = { wrapText: true, vertical: 'top' };
      break;
    case 'bar':
    case 'bar-critical':
      target.fill = BARS[style];
      break;
    case 'plain':
      break;
  }
}
