import type { Finding } from '../../base';
import { letterOf } from '../../sheet';
import { INPUTS } from '../workbook/inputs';
import type { PaperCell, PaperWorkbook } from '../workbook/model';
import type { TypedContent } from './typed-values';

/** A cell of a workbook that came back. */
export interface FileCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** What stands there; of a formula what it came to. */
  readonly content: TypedContent;
  readonly formula?: string;
}

/** How many cells of one sheet are named one by one; the rest are counted. */
const NAMED = 20;

/**
 * Every cell beside the inputs that is not as the program wrote it: a figure of the schedule, a formula, a text, a row
 * put in. None of them is taken; each is told with its address and the reason.
 * @param paper the workbook as the program writes it now, from the same document, scenario and day.
 */
export function otherCells(paper: PaperWorkbook, cells: readonly FileCell[]): Finding[] {
  const bySheet = new Map<string, FileCell[]>();
  for (const cell of cells) {
    const known = bySheet.get(cell.sheet);
    if (known === undefined) bySheet.set(cell.sheet, [cell]);
    else known.push(cell);
  }
  const names = new Set(paper.sheets.map(sheet => sheet.name));
  const strange = [...bySheet.keys()].filter(name => !names.has(name)).map(strangeSheet);
  return [
    ...strange,
    ...paper.sheets.flatMap(({ name, cells: own }) => sheetFindings(name, own, bySheet.get(name) ?? [])),
  ];
}

function sheetFindings(sheet: string, own: readonly PaperCell[], cells: readonly FileCell[]): Finding[] {
  const at = (row: number, column: number) => row * 20_000 + column;
  const expected = new Map(own.map(cell => [at(cell.row, cell.column), cell]));
  const seen = new Set<number>();
  const found: Finding[] = [];
  for (const cell of cells) {
    const place = at(cell.row, cell.column);
    seen.add(place);
    const wanted = expected.get(place);
    const reason = wanted === undefined ? besideTable(cell) : reasonOf(wanted, cell);
    if (reason !== undefined) found.push(notTaken(sheet, cell, reason));
  }
  for (const [place, wanted] of expected)
    if (!seen.has(place) && !isOpen(wanted) && !isEmptyPaper(wanted))
      found.push(notTaken(sheet, { row: wanted.row, column: wanted.column }, EMPTIED));
  if (found.length <= NAMED) return found;
  return [...found.slice(0, NAMED), more(sheet, found.length - NAMED)];
}

/** Cells of the sheet of inputs that are open are read elsewhere. */
function isOpen({ content }: PaperCell): boolean {
  return content.kind === 'open' || ('role' in content && content.role === 'input');
}

function isEmptyPaper({ content }: PaperCell): boolean {
  return content.kind === 'text' && content.text === '';
}

interface Reason {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

const EMPTIED: Reason = {
  code: 'take-back/cell-emptied',
  message: 'A cell of the program was emptied.',
  remedy: 'Nothing need be done: the program writes it again.',
};
const SCHEDULED: Reason = {
  code: 'take-back/depends-on-dates',
  message: 'This figure comes from the schedule, and a workbook cannot level crews.',
  remedy: 'Change dates, crews or durations in the program; the figure follows.',
};
const FORMULA: Reason = {
  code: 'take-back/formula-changed',
  message: 'A formula of the program was changed or typed over.',
  remedy: `Put the change on the sheet ${INPUTS}, in the row of the figure it is about.`,
};
const GIVEN: Reason = {
  code: 'take-back/not-an-input',
  message: 'This figure cannot be changed in a workbook: other parts of the program depend on it.',
  remedy: 'Change it in the program.',
};
const TEXT: Reason = {
  code: 'take-back/text-changed',
  message: 'A text of the program was changed.',
  remedy: 'Change titles and notes in the program.',
};
const BESIDE: Reason = {
  code: 'take-back/beside-the-tables',
  message: 'Something was written where the program writes nothing.',
  remedy: 'Notes may stay in the workbook; figures and new lines are put into the program.',
};

function besideTable({ content }: FileCell): Reason | undefined {
  const isEmpty = content.kind === 'blank' || (content.kind === 'text' && content.text.trim() === '');
  return isEmpty ? undefined : BESIDE;
}

function reasonOf({ content: wanted }: PaperCell, cell: FileCell): Reason | undefined {
  switch (wanted.kind) {
    case 'formula':
      return sameFormula(wanted.formula, cell.formula) ? undefined : FORMULA;
    case 'date':
      return cell.content.kind === 'date' && cell.content.iso === wanted.iso ? undefined : SCHEDULED;
    case 'number':
    case 'money': {
      const { content } = cell;
      if (wanted.role === 'input') return undefined;
      if (content.kind === 'number' && sameNumber(content.value, wanted.value)) return undefined;
      return wanted.role === 'schedule' ? SCHEDULED : GIVEN;
    }
    case 'open':
      return undefined;
    case 'text': {
      const words =
        cell.content.kind === 'text' ? cell.content.text : cell.content.kind === 'blank' ? '' : undefined;
      return words !== undefined && plain(words) === plain(wanted.text) ? undefined : TEXT;
    }
  }
}

/** Control characters do not survive a workbook, and line ends change. */
function plain(words: string): string {
  return words.replace(/[\p{Cc}\s]+/gu, ' ').trim();
}

function sameNumber(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(a), Math.abs(b));
}

/** Spreadsheets write the same formula with other blanks, quotes and letters. */
function sameFormula(own: string, other: string | undefined): boolean {
  const bare = (formula: string) => formula.replace(/[\s'$]/g, '').toUpperCase();
  return other !== undefined && bare(own) === bare(other);
}

function notTaken(sheet: string, { row, column }: Pick<FileCell, 'row' | 'column'>, reason: Reason): Finding {
  return {
    code: reason.code,
    weight: 'warns',
    place: `${sheet}!${letterOf(column)}${row}`,
    message: reason.message,
    meaning: 'It was not taken back.',
    remedy: reason.remedy,
  };
}

function more(sheet: string, count: number): Finding {
  return {
    code: 'take-back/more-cells',
    weight: 'warns',
    place: sheet,
    message: `${count} more cells of this sheet are not as the program wrote them; rows may have been put in or taken out.`,
    meaning: 'None of them was taken back.',
    remedy: `Put changes of figures on the sheet ${INPUTS}, and new work into the program.`,
  };
}

function strangeSheet(name: string): Finding {
  return {
    code: 'take-back/other-sheet',
    weight: 'notes',
    place: name,
    message: `The sheet "${name}" is not of this program.`,
    meaning: 'Nothing was taken from it.',
    remedy: 'Nothing need be done if it holds notes.',
  };
}
