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

/** A table in whole dollars: every row and every column adds up to its total, and the totals to the total of all. */
export interface WholeDollarTable {
  readonly cells: readonly (readonly number[])[];
  readonly columnTotals: readonly number[];
  readonly rowTotals: readonly number[];
  readonly total: number;
}

const sumOf = (amounts: readonly number[]): number => amounts.reduce((sum, amount) => sum + amount, 0);

/**
 * Rounds a table of amounts to whole dollars so that every row and every column adds up to its shown total and the
 * totals to the shown total of all. Each cell and each column total lies within one dollar of its amount.
 * @param rows amounts in whole cents, by row and column.
 * @param given what the columns must add up to, in whole dollars, where that is shown elsewhere; each within one
 * dollar of its sum.
 */
export function wholeDollarTable(
  rows: readonly (readonly number[])[],
  given?: readonly number[],
): WholeDollarTable {
  const [first = []] = rows;
  const columns = first.map((_, column) => rows.map(row => at(row, column)));
  const sums = columns.map(sumOf);
  const columnTotals = given ?? wholeDollars(sums, roundedDollars(sumOf(sums)));
  const total = sumOf(columnTotals);
  const shown = columns.map((column, place) => [...wholeDollars(column, at(columnTotals, place))]);
  const wanted = wholeDollars(rows.map(sumOf), total);
  const over = (row: number) => sumOf(shown.map(column => at(column, row))) - at(wanted, row);
  const isRaised = (column: number, row: number) =>
    at(at(shown, column), row) > at(at(rows, row), column) / 100;
  const isLowered = (column: number, row: number) =>
    at(at(shown, column), row) < at(at(rows, row), column) / 100;
  // A dollar too many in one row goes to a row with one too few, inside a column: no column total moves.
  rows.forEach((_, from) =>
    rows.forEach((__, to) =>
      shown.forEach((column, place) => {
        if (over(from) <= 0 || over(to) >= 0 || !isRaised(place, from) || !isLowered(place, to)) return;
        column[from] = at(column, from) - 1;
        column[to] = at(column, to) + 1;
      }),
    ),
  );
  const cells = rows.map((_, row) => shown.map(column => at(column, row)));
  return { cells, columnTotals, rowTotals: cells.map(sumOf), total };
}
