/**
 * The calculation sheet. A sheet is a short list of tables; a table is a recipe (named columns, written once,
 * run once with no row in hand) times rows (data). Beside the tables: single values in named blocks, look-up
 * tables, totals over a column. One description gives the exact figures, the columns of trials for risk, the
 * live formulas of the workbook and the answer to "why this number?". No formula is written twice.
 *
 * How a sheet is written:
 *
 *     const work = new Sheet('work');
 *     const ship = work.block('ship', 'Ship');
 *     const lightship = ship.given('lightship', 'Lightship', 't', { value: '9950', unit: 't', basis: ..., source: ... });
 *     const lines = work.table(
 *       'items',
 *       { heading: 'Work items', of: items, key: i => i.id, title: i => i.title, own: i => i.unit, place: i => i.place },
 *       t => {
 *         const taken = t.field('taken', 'Quantity taken off', 'own', i => i.quantity);         // Given | undefined
 *         const production = t.field('production', 'Production', 'own/h', i => i.production);
 *         const quantity = t.place('quantity', 'Quantity', rounded(taken, 1));
 *         const hours = t.place('hours', 'Hours', rounded(over(quantity, production), 1));
 *         return { quantity, hours };
 *       },
 *     );
 *     const totals = work.block('totals', 'Totals');
 *     const allHours = totals.place('hours', 'Hours in all', total(lines.columns.hours));
 *     const done = evaluateSheet(work);
 *     done.number(lines.columns.hours, 'asbestos-pipe');   // or done.figure('items/asbestos-pipe/hours')
 *     sheetFindings(done);                                 // why figures are absent
 *
 * Rules:
 * - Operations (`sum`, `priced`, ...) are plain functions that make hidden steps, written into the formula of
 *   whoever uses them; `place(key, title, step)` makes a column with an id. Place any step used twice and any
 *   formula that grows over 120 characters. A placed step cannot be placed again.
 * - Ids: table / row key / column key; block / key for single values. Keys never change with titles or order.
 * - Units are checked by the compiler and again when the recipe is built (`BugError`). `own` is the unit of
 *   the row in hand; a row that gives a number in another unit is a finding and the figure is absent. A given
 *   is in the field's unit: convert what the user typed first (core/units) and keep it in `typed`.
 * - An absent given makes everything that depends on it absent, totals too; `quoted` (first present) is the
 *   one exception, and a branch of `when` not taken does not matter. `knownSoFar` is what is known.
 * - `dollars` rounds to the cent, `rounded(x, d)` to d decimals, half away from zero. Whole-up, at-least and
 *   look-ups settle their operands to the decimals you state. A raw quotient or a product with a difference
 *   must be `rounded` before `dollars`; a raw `power` before anything that jumps.
 * - `link(key, column)` fetches another table's column by row key; `fetched(key, block, unit)` a single value
 *   by its key; `total`, `totalWhere(column, keys, key)`, `runningThrough/Before(column)` add up columns.
 *   `none(unit)` and `unity(unit)` are the constants 0 and 1; every other number is a given.
 *
 * Two sheets stand around the scheduler, each run whole:
 *
 *     const money = new Sheet('money', work);                       // ids of the two never meet
 *     ... t.place('hours', 'Hours', carried(done, lines.columns.hours, t.rowKey()));
 *     ... t.fromSchedule('month', 'Month of spending', 'month', i => ({ value: '24312', unit: 'month' }));
 *
 * `carried` goes on into the work sheet in explanations and workbook formulas.
 */
export * from './kinds';
export { Block } from './block';
export { columns, type ColumnOptions, type ColumnPlan } from './columns/plan';
export { roundOne } from './columns/rounding';
export { evaluateSheet } from './exact';
export { sheetFindings } from './findings';
export type { Given } from './given';
export type { LookUp, LookUpEntry } from './look-up';
export { idOf, SheetResult, type Figure } from './result';
export { SheetMemory } from './memory';
export { Sheet } from './sheet';
export { homeOf, type Step } from './step';
export { type Recipe, type RowsOf, type Table } from './table';
export type { BaseUnit, SheetUnit, StepUnit } from './unit';
export { bareGiven, givenFrom, notApplying, NOT_USED } from './given-from';
export { why, type Why, type WhyStep } from './why';
export { whyTree, type WhyTree } from './why-tree';
export { ABSENT_TEXT, type CellContent, type NumberFormat } from './formula/content';
export {
  emitWorkbook,
  type EmittedWorkbook,
  type Region,
  type RegionColumn,
  type WorkbookCell,
} from './formula/emit';
export { letterOf, placeApart, type Place, type Placement } from './formula/layout';
export type { DefinedName } from './formula/names';
export { LONGEST_FORMULA } from './formula/render';
export { basisReader } from './weakest-basis';
