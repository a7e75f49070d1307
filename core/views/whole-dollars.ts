import { at } from '../base';

/**
 * Rounds amounts to whole dollars by largest remainder, so that the shown amounts add up to the shown total.
 * @param cents the amounts in whole cents; credits are negative.
 * @param total what they must add up to, in whole dollars; the rounded sum when not given.
 * @returns whole dollars, each within one dollar of its amount.
 */
export function wholeDollars(cents: readonly number[], total?: number): readonly number[] {
  const floors = cents.map(amount => Math.floor(amount / 100));
  const wanted = total ?? roundedDollars(cents.reduce((sum, amount) => sum + amount, 0));
  const missing = wanted - floors.reduce((sum, amount) => sum + amount, 0);
  const byRemainder = cents
    .map((amount, place) => ({ place, rest: amount - Math.floor(amount / 100) * 100 }))
    .filter(one => one.rest > 0)
    .sort((a, b) => b.rest - a.rest || a.place - b.place);
  const raised = new Set(byRemainder.slice(0, Math.max(0, missing)).map(one => one.place));
  return floors.map((floor, place) => floor + (raised.has(place) ? 1 : 0));
}

/** Whole dollars of whole cents, half away from zero. */
export function roundedDollars(cents: number): number {
  // Nothing is plain nothing, never minus nothing.
  return Math.sign(cents) * Math.floor((Math.abs(cents) + 50) / 100) + 0;
}

/**
 * Rounds a table of amounts to whole dollars so that every column adds up to its shown total and the totals to the
 * shown total of all.
 * @param rows amounts in whole cents, by row and column.
 */
export function wholeDollarTable(rows: readonly (readonly number[])[]): {
  readonly cells: readonly (readonly number[])[];
  readonly columnTotals: readonly number[];
  readonly rowTotals: readonly number[];
  readonly total: number;
} {
  const [first = []] = rows;
  const columns = first.map((_, column) => rows.map(row => at(row, column)));
  const sums = columns.map(column => column.reduce((sum, amount) => sum + amount, 0));
  const total = roundedDollars(sums.reduce((sum, amount) => sum + amount, 0));
  const columnTotals = wholeDollars(sums, total);
  const shown = columns.map((column, place) => wholeDollars(column, at(columnTotals, place)));
  const rowTotals = wholeDollars(
    rows.map(row => row.reduce((sum, amount) => sum + amount, 0)),
    total,
  );
  return {
    cells: rows.map((_, row) => shown.map(column => at(column, row))),
    columnTotals,
    rowTotals,
    total,
  };
}
