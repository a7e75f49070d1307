import type { PaperCell, PaperSheet } from './model';

/** Some cells of a sheet, those of whole rows, made when they are read. */
export type SheetPart = () => readonly PaperCell[];

const PARTS = new WeakMap<PaperSheet, readonly SheetPart[]>();

/**
 * A sheet that is too large to be held: its cells are made when they are read. Whoever reads it in parts holds no more
 * than one of them. A copy of it with other cells is a sheet like any other.
 * @param parts from the top, each with its whole rows.
 * @param widthsOf the widths of the columns, which may follow from the cells.
 */
export function largeSheet(
  frame: Omit<PaperSheet, 'cells' | 'widths'>,
  parts: readonly SheetPart[],
  widthsOf: (parts: readonly SheetPart[]) => readonly number[],
): PaperSheet {
  let widths: readonly number[] | undefined;
  const sheet = {
    ...frame,
    get cells() {
      return parts.flatMap(part => part());
    },
    get widths() {
      widths ??= widthsOf(parts);
      return widths;
    },
  };
  PARTS.set(sheet, parts);
  return sheet;
}

/** The cells of a sheet in parts from the top: one part for a sheet that is not large. */
export function partsOf(sheet: PaperSheet): readonly SheetPart[] {
  return PARTS.get(sheet) ?? [() => sheet.cells];
}

/** Rows in a part. */
const ROWS_IN_PART = 250;

/** Parts for rows that are made one by one; what stands above them is in the first. */
export function partsOfRows<Row>(
  above: readonly PaperCell[],
  rows: readonly Row[],
  cellsOf: (row: Row, index: number) => readonly PaperCell[],
): SheetPart[] {
  return Array.from({ length: Math.max(1, Math.ceil(rows.length / ROWS_IN_PART)) }, (_, part) => () => {
    const from = part * ROWS_IN_PART;
    const made = rows.slice(from, from + ROWS_IN_PART).flatMap((row, i) => cellsOf(row, from + i));
    return part === 0 ? [...above, ...made] : made;
  });
}
