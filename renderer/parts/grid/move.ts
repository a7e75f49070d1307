/** A cell by its place among the rows and columns that are shown. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** Rows that Page Up and Page Down pass over. */
const PAGE = 10;

function within(value: number, count: number): number {
  return Math.max(0, Math.min(value, count - 1));
}

type Move = (at: Place, extent: Extent) => Place;

/** Where each key leads: the grid pattern of the ARIA Authoring Practices Guide. */
const MOVES: Readonly<Record<string, Move>> = {
  ArrowRight: at => ({ ...at, column: at.column + 1 }),
  ArrowLeft: at => ({ ...at, column: at.column - 1 }),
  ArrowDown: at => ({ ...at, row: at.row + 1 }),
  ArrowUp: at => ({ ...at, row: at.row - 1 }),
  Home: at => ({ ...at, column: 0 }),
  End: (at, extent) => ({ ...at, column: extent.columns }),
  PageDown: at => ({ ...at, row: at.row + PAGE }),
  PageUp: at => ({ ...at, row: at.row - PAGE }),
  'Ctrl+Home': () => ({ row: 0, column: 0 }),
  'Ctrl+End': (_at, extent) => ({ row: extent.rows, column: extent.columns }),
};

/** The place a key leads to, or `undefined` when the key does not move. */
export function moved(key: string, isCtrl: boolean, at: Place, extent: Extent): Place | undefined {
  const move = MOVES[isCtrl ? `Ctrl+${key}` : key];
  if (move === undefined) return undefined;
  const to = move(at, extent);
  return { row: within(to.row, extent.rows), column: within(to.column, extent.columns) };
}

/** The range between two places, from its first to its last row and column. */
export function rangeOf(one: Place, other: Place): { from: Place; to: Place } {
  return {
    from: { row: Math.min(one.row, other.row), column: Math.min(one.column, other.column) },
    to: { row: Math.max(one.row, other.row), column: Math.max(one.column, other.column) },
  };
}

export function isInside(at: Place, range: { from: Place; to: Place }): boolean {
  const { from, to } = range;
  return at.row >= from.row && at.row <= to.row && at.column >= from.column && at.column <= to.column;
}
