import { type Finding, known } from '../../base';
import { letterOf } from '../../sheet';
import { INPUTS, INPUT_HEADS, stampOf, type PaperStamp } from '../workbook/inputs';
import type { FileCell } from './other-cells';
import type { TypedContent, TypedRow } from './typed-values';

/** What a workbook that came back says: what it was made from, and its rows of input cells. */
export interface ReadInputs {
  readonly stamp?: PaperStamp;
  readonly rows: readonly TypedRow[];
  readonly findings: readonly Finding[];
}

type Head = (typeof INPUT_HEADS)[number];

/**
 * Reads the sheet of inputs of a workbook. Rows and columns are found by their heads and keys, not by where they stood,
 * so that sorting, moving or putting in rows does no harm.
 */
export function readInputs(cells: readonly FileCell[]): ReadInputs {
  const own = cells.filter(cell => cell.sheet === INPUTS);
  const stamp = own.flatMap(cell =>
    cell.content.kind === 'text' ? (stampOf(cell.content.text) ?? []) : [],
  )[0];
  const heads = headsOf(own);
  if (stamp === undefined || heads === undefined) return { rows: [], findings: [notOurs()] };
  const byRow = new Map<number, Map<number, TypedContent>>();
  for (const { row, column, content } of own.filter(cell => cell.row > heads.row)) {
    const found = byRow.get(row) ?? new Map<number, TypedContent>();
    byRow.set(row, found.set(column, content));
  }
  const rows: TypedRow[] = [];
  const findings: Finding[] = [];
  for (const [row, contents] of [...byRow].sort(([a], [b]) => a - b)) {
    const at = (head: Head) => contents.get(heads.columns.get(head) ?? 0) ?? { kind: 'blank' as const };
    const address = `${INPUTS}!${letterOf(known(heads.columns, 'Amount'))}${row}`;
    const key = textOf(at('Key'));
    if (key === '') {
      findings.push(rowWithoutKey(address));
      continue;
    }
    rows.push({
      address,
      key,
      value: at('Amount'),
      unit: textOf(at('Unit')),
      basis: textOf(at('Basis of a new amount')),
      source: textOf(at('Source of a new amount')),
    });
  }
  return { stamp, rows, findings };
}

function headsOf(cells: readonly FileCell[]): { row: number; columns: Map<Head, number> } | undefined {
  const key = cells.find(({ content }) => content.kind === 'text' && content.text.trim() === 'Key');
  if (key === undefined) return undefined;
  const columns = new Map<Head, number>();
  for (const cell of cells.filter(({ row }) => row === key.row)) {
    const head = INPUT_HEADS.find(words => words === textOf(cell.content));
    if (head !== undefined) columns.set(head, cell.column);
  }
  return columns.has('Amount') && columns.has('Unit') ? { row: key.row, columns } : undefined;
}

/** The words of a cell; a number as it is written. */
export function textOf(content: TypedContent): string {
  if (content.kind === 'text') return content.text.trim();
  return content.kind === 'number' ? String(content.value) : '';
}

function notOurs(): Finding {
  return {
    code: 'take-back/not-ours',
    weight: 'blocks',
    place: INPUTS,
    message: 'The file has no sheet of inputs with the line that says what it was made from.',
    meaning: 'Nothing was taken back.',
    remedy:
      'Choose a workbook that this program has written, or write a new one and put the changes in there.',
  };
}

function rowWithoutKey(address: string): Finding {
  return {
    code: 'take-back/row-without-key',
    weight: 'warns',
    place: address,
    message: 'This row has no key, so nothing says which figure it is.',
    meaning: 'Nothing was taken from it.',
    remedy: 'Change the figure in its own row. New work is put in with the program.',
  };
}
