import { BASES } from '../../base';
import type { InputCell } from '../take-back';
import { unitShown } from '../unit-shown';
import { headingRow, text } from './cells';
import { largeSheet, partsOfRows } from './large-sheet';
import type { PaperCell, PaperContent, PaperSheet } from './model';

/** The sheet on which people change figures; it has no blank in its name so that references stay short. */
export const INPUTS = 'Inputs';
/** The column of the figures. */
export const INPUT_COLUMN = 'C';
export const FIRST_INPUT_ROW = 6;

/** The heads of the columns: the reader of a workbook that came back looks for them. */
export const INPUT_HEADS = [
  'Kind',
  'Figure',
  'Amount',
  'Unit',
  'As handed out',
  'Changed',
  'May move dates',
  'Basis of a new amount',
  'Source of a new amount',
  'Basis so far',
  'Source so far',
  'Key',
] as const;

/** What a workbook says of itself, so that it finds its way back to the document it was made from. */
export interface PaperStamp {
  readonly document: string;
  readonly scenario: string;
  readonly dated: string;
}

/** The line that names the document, the scenario and the day. */
export function stampText({ document, scenario, dated }: PaperStamp): string {
  return `Made from document ${document}, scenario ${scenario}, on ${dated}`;
}

/** Reads the line back; nothing when it is not one. */
export function stampOf(line: string): PaperStamp | undefined {
  const found = /^Made from document ([0-9a-f]+), scenario ([a-z0-9-]+), on (\d{4}-\d{2}-\d{2})$/.exec(
    line.trim(),
  );
  const [, document, scenario, dated] = found ?? [];
  return document === undefined || scenario === undefined || dated === undefined
    ? undefined
    : { document, scenario, dated };
}

/** Every figure that may be changed, once, open; all sheets read it here, and the program takes changes back from here. */
export function inputsSheet(inputs: readonly InputCell[], stamp: PaperStamp): PaperSheet {
  const last = FIRST_INPUT_ROW + inputs.length - 1;
  const frame = {
    name: INPUTS,
    printColumns: 9,
    headingRows: FIRST_INPUT_ROW - 1,
    landscape: true,
    numberInputs: [`${INPUT_COLUMN}${FIRST_INPUT_ROW}:${INPUT_COLUMN}${last}`],
    choices: [{ range: `H${FIRST_INPUT_ROW}:H${last}`, words: BASES }],
  };
  const widths = [14, 58, 14, 12, 14, 10, 10, 18, 30, 18, 60, 44];
  const parts = partsOfRows(above(stamp), inputs, (cell, i) => inputRow(cell, FIRST_INPUT_ROW + i));
  return largeSheet(frame, parts, () => widths);
}

/** What stands above the figures. */
function above(stamp: PaperStamp): PaperCell[] {
  return [
    text(1, 1, 'Inputs: change figures here', 'title'),
    text(
      2,
      1,
      'Type plain numbers in the sand-coloured cells, in the unit beside them. Every sheet follows.',
      'note',
    ),
    text(
      3,
      1,
      'Give the basis and the source of a new amount if you know them. The program takes the changes back with a preview.',
      'note',
    ),
    text(4, 1, stampText(stamp), 'note'),
    ...headingRow(FIRST_INPUT_ROW - 1, INPUT_HEADS),
  ];
}

function inputRow(cell: InputCell, row: number): PaperCell[] {
  const formula = `IF(${INPUT_COLUMN}${row}=E${row},"","changed")`;
  const figure = (role: 'input' | 'given'): PaperContent =>
    cell.value === undefined
      ? { kind: role === 'input' ? 'open' : 'text', text: '' }
      : { kind: 'number', value: Number(cell.value), decimals: undefined, role };
  return [
    text(row, 1, cell.kind),
    text(row, 2, cell.title),
    { row, column: 3, content: figure('input') },
    text(row, 4, unitShown(cell.unit)),
    { row, column: 5, content: figure('given') },
    {
      row,
      column: 6,
      content: { kind: 'formula', formula, result: '', format: 'text', decimals: undefined },
    },
    text(row, 7, cell.movesDates ? 'yes' : 'no'),
    { row, column: 8, content: { kind: 'open', text: '' } },
    { row, column: 9, content: { kind: 'open', text: '' } },
    text(row, 10, cell.basis ?? (cell.value === undefined ? 'worked out' : '')),
    text(row, 11, cell.source ?? ''),
    text(row, 12, cell.key),
  ];
}
