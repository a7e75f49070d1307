import { BugError } from '../../base';
import { passOn } from '../columns/runs';
import { call } from '../formula/term';
import type { Book, Kind } from '../kind';
import { operandOf } from '../quick/cells';
import { rowNamed } from '../rows-named';
import { inputOf, makeStep, nameOf, requireUnit, textsOf, unitIn, type Step } from '../step';
import type { SheetUnit } from '../unit';

function cellOf(self: Step, row: number, book: Book): number {
  const target = inputOf(self, 1);
  const from = rowNamed(textsOf(inputOf(self, 0)), target, row);
  const isSame = from >= 0 && (!self.unit.includes('own') || unitIn(self, row) === unitIn(target, from));
  return isSame ? book.cell(target, from) : -1;
}

const record: Kind = {
  operation: 'link',
  cells: (self, row, book) => [cellOf(self, row, book)],
  oneCell: cellOf,
  exact: ([value]) => value,
  quick: (cells, operands, out) => cells.copy(out, operandOf(operands, 0)),
  reason: () => 'the row it names does not exist, or is counted in another unit',
  live: passOn,
  passes: () => 0,
  formula: context => call('INDEX', context.range(1), call('MATCH', context.term(0), context.keys(1), 0)),
  words: (key, target) => `${target} of the row named by ${key}`,
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
