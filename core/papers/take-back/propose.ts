import { BASES, type Basis, type Finding } from '../../base';
import type { ProposedEdit } from './edits';
import { unitShown } from '../unit-shown';
import { inputCells, type InputCell, type WholeEvaluation } from './input-cells';
import { DECIMALS, faultOf, readTyped, unitWords, type TypedRow } from './typed-values';

/** What a workbook or a CSV file would change, and what of it cannot be taken. */
export interface Proposal {
  readonly edits: readonly ProposedEdit[];
  readonly findings: readonly Finding[];
}

/** The paper that came back, as it names itself. */
export interface PaperOrigin {
  /** What it is called where a reader looks for it: `workbook` or `CSV file`. */
  readonly kind: 'workbook' | 'CSV file';
  /** The day on which it was made. */
  readonly dated: string;
}

/**
 * The changes that the rows of a paper ask for. A row that says what the project says is no change; one that cannot be
 * read, or that nothing of the project answers to, is a finding with its address. No row is passed over in silence.
 */
export function proposeEdits(
  evaluation: WholeEvaluation,
  rows: readonly TypedRow[],
  origin: PaperOrigin,
): Proposal {
  const cells = new Map(inputCells(evaluation).map(cell => [cell.key, cell]));
  const edits: ProposedEdit[] = [];
  const findings: Finding[] = [];
  const seen = new Map<string, string>();
  for (const row of rows) {
    const cell = cells.get(row.key);
    const before = seen.get(row.key);
    const outcome =
      cell === undefined
        ? unknownRow(row)
        : before !== undefined
          ? twice(row, cell, before)
          : editOf(row, cell, origin);
    seen.set(row.key, row.address);
    if (outcome === undefined) continue;
    if ('code' in outcome) findings.push(outcome);
    else edits.push(outcome);
  }
  return { edits, findings: [...findings, ...missingRows(cells, seen)] };
}

function editOf(row: TypedRow, cell: InputCell, origin: PaperOrigin): ProposedEdit | Finding | undefined {
  const { address } = row;
  if (row.unit !== cell.unit && row.unit !== unitShown(cell.unit))
    return faultOf(
      address,
      cell,
      `The unit beside it was changed from ${unitWords(cell.unit)} to "${row.unit}".`,
      `Set the unit back and give the amount in ${unitWords(cell.unit)}.`,
    );
  const value = readTyped(row, cell);
  if (typeof value === 'object') return value;
  if (isSame(value, cell)) return undefined;
  if (value === undefined && !mayBeBlank(cell))
    return faultOf(
      address,
      cell,
      'The cell is empty.',
      `Type an amount, or ${cell.value ?? '0'} to leave it as it was.`,
    );
  const basis = basisOf(row, cell);
  if (typeof basis === 'object') return basis;
  return { cell, address, value, basis, source: sourceOf(row, cell, origin), dated: origin.dated };
}

/** A figure that the estimate works out when the document has none. */
function mayBeBlank({ kind }: InputCell): boolean {
  return kind === 'quantity' || kind === 'survey result';
}

function isSame(value: string | undefined, { value: own }: InputCell): boolean {
  if (value === undefined || own === undefined) return value === own;
  return asKept(value) === asKept(own);
}

/** The number as a spreadsheet keeps it, fifteen significant digits, and to the decimals that a figure may have. */
function asKept(value: string): number {
  return Number(Number(Number(value).toPrecision(15)).toFixed(DECIMALS));
}

/** What a typed figure rests on when nobody says: a quote is quoted, a survey result surveyed, all else judgement. */
const USUAL: Readonly<Record<InputCell['kind'], Basis>> = {
  quote: 'quoted',
  'survey result': 'surveyed',
  quantity: 'judgement',
  rate: 'judgement',
  particular: 'judgement',
};

function basisOf({ address, basis }: TypedRow, cell: InputCell): Basis | Finding {
  const word = basis.trim().toLowerCase();
  if (word === '') return USUAL[cell.kind];
  return (
    BASES.find(known => known === word) ??
    faultOf(address, cell, `"${basis}" is not a basis.`, `Write one of: ${BASES.join(', ')}.`)
  );
}

function sourceOf({ address, source }: TypedRow, cell: InputCell, origin: PaperOrigin): string {
  const typed = source.trim();
  if (typed.length >= 3) return typed.slice(0, 1000);
  const before =
    cell.value === undefined
      ? 'worked out before'
      : `before: ${cell.value} ${cell.unit === '1' ? '' : cell.unit}`;
  return `Typed into the ${origin.kind} of ${origin.dated}, ${address}; ${before.trim()}`;
}

function unknownRow({ address, key }: TypedRow): Finding {
  return {
    code: 'take-back/no-such-figure',
    weight: 'warns',
    place: address,
    message: `"${key}" names no figure of this scenario that can be changed in a paper.`,
    meaning: 'Nothing was taken from this row.',
    remedy: 'Write the paper again from the project as it is now, and change the figure there.',
  };
}

function twice({ address }: TypedRow, cell: InputCell, before: string): Finding {
  return faultOf(
    address,
    cell,
    `It stands at ${before} too.`,
    'Keep one row for each figure; the first was taken.',
  );
}

/** Figures whose row is gone from the paper: nothing is taken for them, and the user is told. */
function missingRows(cells: ReadonlyMap<string, InputCell>, seen: ReadonlyMap<string, string>): Finding[] {
  const missing = [...cells.values()].filter(cell => !seen.has(cell.key));
  const [first] = missing;
  if (first === undefined) return [];
  return [
    {
      code: 'take-back/rows-missing',
      weight: 'notes',
      place: 'Inputs',
      message: `${missing.length} figures of the project have no row in the paper, the first: ${first.title}.`,
      meaning: 'They stay as they are in the project.',
      remedy: 'If rows were taken out on purpose there is nothing to do; else write the paper again.',
    },
  ];
}
