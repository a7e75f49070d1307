import type { PaperCell } from './model';

/** The cells of a plain row. */
export type SheetRow = readonly (string | number)[];

/** Cells of rows one below the other, from a row on. */
export function inOrder<T>(
  rows: readonly T[],
  first: number,
  cellsOf: (row: T, at: number) => readonly PaperCell[],
): PaperCell[] {
  return rows.flatMap((row, i) => [...cellsOf(row, first + i)]);
}
