import { BugError } from '../../base';
import { addAll } from '../columns/runs';
import { ZERO, plus } from '../decimal';
import { folded } from '../exactly';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { NEAR } from '../quick/cells';
import { added } from '../quick/operations';
import { inputOf, makeStep, nameOf, type Step } from '../step';
import type { SheetUnit } from '../unit';

/** A running total: the one of the row before, and one more row of the column. */
const record = (until: 'this row' | 'the row before'): Kind => ({
  operation: 'running total',
  settings: { until },
  cells: (self, row, book) => {
    const column = inputOf(self, 0);
    const last = until === 'this row' ? row : row - 1;
    if (last < 0) return [];
    return row === 0 ? [book.cell(column, last)] : [book.cell(self, row - 1), book.cell(column, last)];
  },
  exact: folded(plus, ZERO),
  quick: (cells, operands, out) => added(cells, operands, out) && cells.stateOf(out) !== NEAR,
  live: addAll,
  formula: context => call('SUM', context.downTo(0, until)),
  words: title => `the running total of ${title} to ${until}`,
});

const THROUGH = record('this row');
const BEFORE = record('the row before');

function running<U extends SheetUnit>(column: Step<U>, kind: Kind): Step<U> {
  if (column.home === undefined || column.scope === undefined)
    throw new BugError(`running total: ${nameOf(column)} is not a column of a table`);
  if (column.unit.includes('own'))
    throw new BugError(`running total: ${nameOf(column)} does not add up over its rows`);
  return makeStep(column.unit, kind, [column], column.looseness);
}

/** The total of a column of this table from its first row through this row, in the order of the rows. */
export function runningThrough<U extends SheetUnit>(column: Step<U>): Step<U> {
  return running(column, THROUGH);
}

/** The total of a column of this table over the rows before this one. */
export function runningBefore<U extends SheetUnit>(column: Step<U>): Step<U> {
  return running(column, BEFORE);
}
