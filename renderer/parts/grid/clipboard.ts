import { readTyped, type Column, type Measures, type Row, type Shown } from '../../../core/views';
import { together, typedEdit, type NamedEdit } from '../../edits/edits';
import type { Place } from './move';

/** A cell as a spreadsheet takes it: no thousands marks, a plain minus, nothing for a dash. */
function spreadsheetText(shown: Shown | undefined): string {
  if (shown === undefined || shown.text === '–') return '';
  const isNumber = /^[\u2212-]?[\d,]+(\.\d+)?$/.test(shown.text);
  return isNumber
    ? shown.text.replaceAll(',', '').replace('\u2212', '-')
    : shown.text.replace(/[\t\n\r]/g, ' ');
}

/** A range as tab-separated text, which spreadsheets paste as cells. */
export function copied(
  rows: readonly Row[],
  columns: readonly Column[],
  range: { from: Place; to: Place },
): string {
  return rows
    .slice(range.from.row, range.to.row + 1)
    .map(row =>
      columns
        .slice(range.from.column, range.to.column + 1)
        .map(column => spreadsheetText(row.cells[column.key]))
        .join('\t'),
    )
    .join('\n');
}

export interface Pasted {
  readonly edit: NamedEdit | undefined;
  readonly words: string;
}

/** Pastes tab-separated text from a place on: one edit of all cells that may be changed, and what was passed over. */
export function pasted(
  text: string,
  rows: readonly Row[],
  columns: readonly Column[],
  at: Place,
  scenario: string,
  measures: Measures,
): Pasted {
  const edits: NamedEdit[] = [];
  let passed = 0;
  text
    .replace(/\r?\n$/, '')
    .split(/\r?\n/)
    .forEach((line, down) => {
      line.split('\t').forEach((cell, along) => {
        const column = columns[at.column + along];
        const edit = column === undefined ? undefined : rows[at.row + down]?.cells[column.key]?.edit;
        const typed = edit === undefined ? undefined : readTyped(edit, cell, measures);
        if (
          edit !== undefined &&
          typed !== undefined &&
          'value' in typed &&
          isAllowed(edit.choices, typed.value)
        ) {
          edits.push(typedEdit(edit, scenario, typed.value));
        } else passed += 1;
      });
    });
  const words =
    passed === 0
      ? `Pasted ${edits.length} cells.`
      : `Pasted ${edits.length} cells; ${passed} could not be changed and stay.`;
  return { edit: edits.length === 0 ? undefined : together(`paste ${edits.length} cells`, edits), words };
}

function isAllowed(choices: readonly { readonly id: string }[] | undefined, value: string): boolean {
  return choices === undefined || choices.some(choice => choice.id === value);
}
