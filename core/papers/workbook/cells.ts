import { dollarsOf, fromCents, type Money } from '../../money';
import type { FigureRole, PaperCell, PaperStyle } from './model';

/** A text cell. */
export function text(row: number, column: number, words: string, style?: PaperStyle): PaperCell {
  return { row, column, content: { kind: 'text', text: words }, ...(style === undefined ? {} : { style }) };
}

/** What an absent figure reads. */
export const ABSENT = 'absent, see Findings';

/** A total that names a single value of the calculation sheets; absent ones say so in words. */
export function moneyFormula(
  row: number,
  column: number,
  formula: string,
  amount: Money | undefined,
  style?: PaperStyle,
): PaperCell {
  if (amount === undefined) return text(row, column, ABSENT, style);
  return {
    row,
    column,
    content: { kind: 'formula', formula, result: dollarsOf(amount), format: 'money', decimals: 2 },
    ...(style === undefined ? {} : { style }),
  };
}

/** An amount that comes from the program, of whole cents. */
export function centsCell(row: number, column: number, cents: number): PaperCell {
  return { row, column, content: { kind: 'money', value: dollarsOf(fromCents(cents)), role: 'result' } };
}

/** By how much the total of this workbook was changed since it was handed out. */
export const CHANGED_SINCE = 'changed_since';

/** A row that keeps figures of the program and the live total together after a change. */
export function changedSinceRow(row: number, formula: string): PaperCell[] {
  return [
    text(row, 1, 'Changed in this workbook since it was handed out'),
    { row, column: 2, content: { kind: 'formula', formula, result: 0, format: 'money', decimals: 2 } },
  ];
}

/** A heading row: titles from column A on. */
export function headingRow(row: number, titles: readonly string[]): PaperCell[] {
  return titles.map((title, i) => text(row, i + 1, title, 'heading'));
}

/** A number with its decimals. */
export function number(
  row: number,
  column: number,
  value: number | undefined,
  decimals: number,
  role: FigureRole,
): PaperCell {
  return value === undefined
    ? text(row, column, ABSENT)
    : { row, column, content: { kind: 'number', value, decimals, role } };
}

/** A date cell. */
export function date(row: number, column: number, iso: string): PaperCell {
  return { row, column, content: { kind: 'date', iso } };
}

/** A caution, a sentence a row, so that none is cut off at the edge of its column. */
export function cautionRows(words: string, first: number): PaperCell[] {
  return words.split(/(?<=[.;]) /).map((sentence, i) => text(first + i, 1, sentence, 'caution'));
}
