import { BugError } from '../../base';
import { isDecimalText } from '../../units';
import { ONE, ZERO, exactOfText, type Exact } from '../decimal';
import { atom } from '../formula/term';
import type { Given } from '../given';
import type { Kind, Run } from '../kind';
import { Cells } from '../quick/cells';
import { isReadWhole, wholeOfText } from '../quick/text';
import { patchOf } from '../patched';
import { makeStep, type Step } from '../step';
import type { Scope } from '../scope';
import { boundUnit, type SheetUnit, type StepUnit } from '../unit';

function notCalculated(): never {
  throw new BugError('a leaf of the sheet is given, not calculated');
}

const live = (): Run => notCalculated();

/** What is wrong with a given as it stands in a row: nothing, not there, another unit, not a number. */
function fault(given: Given | undefined, unit: string): string | undefined {
  if (given?.value === undefined) return 'it is not given';
  if (given.unit !== unit) return `it is given in ${given.unit}, not in ${unit}`;
  const isPlain = isNumber(given.value) && isNumber(given.low) && isNumber(given.high);
  return isPlain ? undefined : 'it is not a plain number';
}

/** Whether a text is a plain number; none given is no fault. */
function isNumber(text: string | undefined): boolean {
  return text === undefined || isReadWhole(text) || isDecimalText(text);
}

/** A number given for each row of a table, or one single given. */
export function givenStep<U extends SheetUnit>(
  unit: U,
  givens: readonly (Given | undefined)[],
  scope: Scope | undefined,
): Step<U> {
  const unitIn = (row: number) => boundUnit(unit, scope?.rows[row]?.own);
  const isSound = (row: number) => fault(givens[row], unitIn(row)) === undefined;
  const kind: Kind = {
    operation: 'given',
    exact: (_, row) => {
      const text = isSound(row) ? givens[row]?.value : undefined;
      return text === undefined ? undefined : exactOfText(text);
    },
    quickColumn: (cells, first) => {
      const column = givenColumn(givens, unit, scope, isSound);
      column?.into(cells, first);
      return column !== undefined;
    },
    quick: (cells, _, out, row) => {
      const text = isSound(row) ? givens[row]?.value : undefined;
      if (text === undefined) return cells.putAbsent(out);
      const read = wholeOfText(text);
      return read !== undefined && cells.putWhole(out, read.whole, read.decimals);
    },
    reason: (_, row) => fault(givens[row], unitIn(row)) ?? 'it is not given',
    live,
    formula: notCalculated,
    words: () => 'given',
    givens,
  };
  return makeStep(unit, kind, [], 0, scope);
}

/** Columns of givens as numbers, by the list of givens: the same lists are evaluated again and again. */
const COLUMNS = new WeakMap<
  readonly unknown[],
  { readonly unit: string; readonly scope: Scope | undefined; readonly cells: Cells | undefined }
>();

/** A column of givens as cells of its own; undefined when one of them has too many digits for a double. */
function givenColumn(
  givens: readonly (Given | undefined)[],
  unit: string,
  scope: Scope | undefined,
  isSound: (row: number) => boolean,
): Cells | undefined {
  const known = COLUMNS.get(givens);
  if (known !== undefined && known.unit === unit && known.scope === scope) return known.cells;
  const column = new Cells(givens.length);
  const put = (row: number): boolean => {
    const text = isSound(row) ? givens[row]?.value : undefined;
    if (text === undefined) return column.putAbsent(row);
    const read = wholeOfText(text);
    return read !== undefined && column.putWhole(row, read.whole, read.decimals);
  };
  const patched = patchedRows(givens, unit, scope, column);
  const fits = patched?.every(put) ?? givens.every((_, row) => put(row));
  const cells = fits ? column : undefined;
  COLUMNS.set(givens, { unit, scope, cells });
  return cells;
}

/** Fills a column from the list that the givens were made from, where it is known. @returns the rows that differ. */
function patchedRows(
  givens: readonly (Given | undefined)[],
  unit: string,
  scope: Scope | undefined,
  column: Cells,
): readonly number[] | undefined {
  const patch = patchOf(givens);
  const before = patch && COLUMNS.get(patch.of);
  if (before?.cells === undefined || before.unit !== unit || before.scope !== scope) return undefined;
  column.take(before.cells, 0, 0, givens.length);
  return patch?.rows;
}

/** Text given for each row: the key of another row, a stage. */
export function textStep(texts: readonly (string | undefined)[], scope: Scope): Step<'text'> {
  const kind: Kind = {
    operation: 'key',
    exact: () => undefined,
    quickColumn: () => true,
    live,
    formula: notCalculated,
    words: () => 'key',
    texts,
  };
  return makeStep('text', kind, [], 0, scope);
}

function constant<U extends StepUnit>(unit: U, value: Exact): Step<U> {
  const kind: Kind = {
    operation: 'constant',
    exact: () => value,
    quick: (cells, _, out) => cells.putWhole(out, value.toNumber(), 0),
    live,
    formula: () => atom(value.toFixed()),
    words: () => value.toFixed(),
  };
  return makeStep(unit, kind, [], 0);
}

/** Nothing of a unit: the other branch of a condition. */
export function none<U extends SheetUnit>(unit: U): Step<U> {
  return constant(unit, ZERO);
}

/** One of a unit. */
export function unity<U extends SheetUnit>(unit: U): Step<U> {
  return constant(unit, ONE);
}
