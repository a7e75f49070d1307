import { BugError } from '../../base';
import type { SheetResult } from '../result';
import type { Step } from '../step';
import type { Table } from '../table';

/** Where a table, block or look-up table stands in the workbook: sheet and row of its headings, from column A on. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
}

/** Places by the id of the table, block or look-up table. */
export type Placement = ReadonlyMap<string, Place>;

/** Rows that headings take: titles, and below them units. */
export const HEADING_ROWS = 2;

/** A table in the workbook: inputs left, calculation right. */
export interface TablePlace extends Place {
  readonly table: Table;
  /** Key, title and, when rows have units of their own, unit come first. */
  readonly leading: number;
  readonly columns: readonly Step[];
}

/** Whether the rows of a table have units of their own. */
export function hasOwnUnits(table: Table): boolean {
  return table.scope.rows.some(row => row.own !== undefined);
}

/** The columns of a table in workbook order: what is given or carried left, what is calculated right. */
export function layOut(table: Table, place: Place): TablePlace {
  const isInput = (step: Step) => step.kind.givens !== undefined || step.kind.texts !== undefined;
  const carried = (step: Step) => !isInput(step) && step.kind.carried !== undefined;
  const columns = [
    ...table.placed.filter(isInput),
    ...table.placed.filter(carried),
    ...table.placed.filter(step => !isInput(step) && !carried(step)),
  ];
  return { ...place, table, leading: hasOwnUnits(table) ? 3 : 2, columns };
}

/** The first and last row of values; a guard row follows the last, so that a row put in at the end is counted. */
export function rowsOfPlace(place: Place, count: number): { first: number; last: number; guard: number } {
  const first = place.row + HEADING_ROWS;
  return { first, last: first + count - 1, guard: first + count };
}

/** `A` for 1, `AA` for 27. */
export function letterOf(column: number): string {
  const rest = (column - 1) % 26;
  const letter = String.fromCharCode(65 + rest);
  return column > 26 ? letterOf((column - 1 - rest) / 26) + letter : letter;
}

/** A sheet name as a formula writes it. */
export function quotedName(sheet: string): string {
  return /^[A-Za-z]\w*$/.test(sheet) && !/^[A-Za-z]{1,3}\d+$/.test(sheet) ? sheet : `'${sheet}'`;
}

/** Every table on a sheet of its own; blocks stacked on `Inputs`, look-up tables stacked on `Tables`. */
export function placeApart(results: readonly SheetResult[]): Placement {
  const places = new Map<string, Place>();
  const next = new Map<string, number>();
  const stack = (id: string, sheet: string, rows: number) => {
    const row = next.get(sheet) ?? 1;
    places.set(id, { sheet, row });
    next.set(sheet, row + rows + HEADING_ROWS + 2);
  };
  for (const { sheet } of results) {
    for (const table of sheet.tables) stack(table.id, sheetName(table.heading), table.scope.rows.length + 1);
    for (const block of sheet.blocks) stack(block.id, 'Inputs', block.entries().length);
    for (const table of sheet.lookUps) stack(table.id, 'Tables', table.entries.length);
  }
  return places;
}

function sheetName(heading: string): string {
  const name = heading
    .replaceAll(/[*?:\\/[\]']/g, ' ')
    .slice(0, 31)
    .trim();
  if (name === '') throw new BugError(`"${heading}" cannot name a sheet of a workbook`);
  return name;
}
