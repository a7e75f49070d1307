import { BugError } from '../../base';
import { innerOf } from '../inner';
import { atom, call } from '../formula/term';
import type { Kind } from '../kind';
import { requireSettled } from '../looseness';
import { idIn, type SheetResult } from '../result';
import { rowNamed } from '../rows-named';
import { makeStep, nameOf, requireUnit, textsOf, unitIn, type Step } from '../step';
import { boundUnit, type SheetUnit } from '../unit';

function record(from: SheetResult, step: Step, key: Step<'text'> | undefined): Kind {
  const rowBefore = (row: number): number | undefined => {
    if (key === undefined) return 0;
    const from = rowNamed(textsOf(key), step, row);
    if (from < 0) return undefined;
    const wanted = boundUnit(step.unit, key.scope?.rows[row]?.own);
    return !step.unit.includes('own') || unitIn(step, from) === wanted ? from : undefined;
  };
  const id = (row: number): string | undefined => {
    const from = rowBefore(row);
    return from === undefined ? undefined : idIn(step, from);
  };
  const before = innerOf(from);
  const first = before.order.cell(step, 0);
  return {
    operation: 'carried',
    exact: (_, row) => {
      const at = rowBefore(row);
      return at === undefined ? undefined : before.value(first + at);
    },
    quick: (cells, _, out, row) => cells.copy(out, first + (rowBefore(row) ?? Number.NaN), before.cells),
    reason: () => 'it is absent where it is calculated',
    live: () => {
      throw new BugError('a carried figure is given by the sheet before, not calculated');
    },
    formula: context => {
      const names = context.carried();
      if (names.keys === undefined) return atom(names.values);
      return call('INDEX', names.values, call('MATCH', context.term(0), names.keys, 0));
    },
    words: (...titles) => titles.join(),
    carried: { from, step, id },
  };
}

function requirePlaced(from: SheetResult, step: Step): void {
  if (step.home?.sheet !== from.sheet)
    throw new BugError(`carried: ${nameOf(step)} is not placed in the sheet before`);
  requireSettled('another sheet', step, 0);
}

/**
 * A figure of a sheet that was run before, from the row that a key of this row names: hours of the work
 * sheet in a line of the money sheet. Explanation and workbook formulas go on into that sheet.
 */
export function carried<U extends SheetUnit>(from: SheetResult, column: Step<U>, key: Step<'text'>): Step<U> {
  requirePlaced(from, column);
  requireUnit('carried', key, 'text');
  if (column.scope === undefined) throw new BugError(`carried: ${nameOf(column)} is not a column`);
  return makeStep(column.unit, record(from, column, key), [key], 0, key.scope);
}

/** A single figure of a sheet that was run before. */
export function carriedSingle<U extends SheetUnit>(from: SheetResult, single: Step<U>): Step<U> {
  requirePlaced(from, single);
  if (single.scope !== undefined)
    throw new BugError(`carried: ${nameOf(single)} is a column, not a single value`);
  return makeStep(single.unit, record(from, single, undefined), [], 0);
}
