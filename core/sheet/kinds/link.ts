import { BugError } from '../../base';
import { passOn } from '../columns/runs';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { rowsNamed } from '../rows-named';
import { makeStep, nameOf, requireUnit, type Step } from '../step';
import { boundUnit, type SheetUnit } from '../unit';

const record: Kind = {
  operation: 'link',
  cells: (self, row, book) => {
    const [key, target] = self.inputs;
    if (target?.scope === undefined) return [-1];
    const at = rowsNamed(key?.kind.texts ?? [], target.scope)[row] ?? -1;
    if (at < 0) return [-1];
    const isSame =
      !self.unit.includes('own') ||
      boundUnit(self.unit, self.scope?.rows[row]?.own) === boundUnit(target.unit, target.scope.rows[at]?.own);
    return [isSame ? book.cell(target, at) : -1];
  },
  exact: ([value]) => value,
  quick: (cells, [from = -1], out) => cells.copy(out, from),
  reason: () => 'the row it names does not exist, or is counted in another unit',
  live: passOn,
  passes: () => 0,
  formula: context => call('INDEX', context.range(1), call('MATCH', context.term(0), context.keys(1), 0)),
  words: ([key, target]) => `${target ?? ''} of the row named by ${key ?? ''}`,
};

/**
 * The value of another table's column in the row that a key of this row names: a line fetches its quantity.
 * A row that does not exist is absent with a finding.
 * @throws BugError when the column is not placed.
 */
export function link<U extends SheetUnit>(key: Step<'text'>, column: Step<U>): Step<U> {
  requireUnit('link', key, 'text');
  if (column.home === undefined || column.scope === undefined)
    throw new BugError(`link: ${nameOf(column)} is not a column of a table`);
  return makeStep(column.unit, record, [key, column], column.looseness, key.scope);
}
