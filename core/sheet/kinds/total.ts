import { onlyOther } from '../only-other';
import { BugError } from '../../base';
import { addPresent, countPresent } from '../columns/kernels';
import { addAll, asTrials } from '../columns/runs';
import { Exact, ZERO, plus } from '../decimal';
import { folded } from '../exactly';
import { call } from '../formula/term';
import type { Book, Kind, Operand, Run } from '../kind';
import type { Looseness } from '../looseness';
import { rowsOf } from '../order';
import { ABSENT, type Cells } from '../quick/cells';
import { added } from '../quick/operations';
import { inputOf, makeSingle, nameOf, type Step } from '../step';
import type { SheetUnit, StepUnit } from '../unit';

/** The cells of a step's first input, in every row of its table. */
function wholeColumn(self: Step, _row: number, book: Book): number[] {
  const column = inputOf(self, 0);
  const first = book.cell(column, 0);
  const cells: number[] = [];
  for (let row = 0; row < rowsOf(column); row++) cells.push(first + row);
  return cells;
}

const whole: Kind = {
  operation: 'total',
  cells: wholeColumn,
  exact: folded(plus, ZERO),
  quick: (cells, operands, out) => added(cells, operands, out),
  live: addAll,
  passes: constants => onlyOther(constants, 0),
  formula: context => call('SUM', context.range(0)),
  words: title => `the total of ${title}`,
};

type Gather = (out: Float64Array, a: Float64Array, n: number) => void;

function gathered(gather: Gather, operands: readonly Operand[], out: Float64Array): Run {
  const arrays = operands.map(operand => asTrials(operand, out.length));
  return n => {
    out.fill(0, 0, n);
    for (const array of arrays) gather(out, array, n);
  };
}

const isPresent = (cells: Cells, cell: number) => cells.stateOf(cell) !== ABSENT;

const present: Kind = {
  operation: 'known so far',
  cells: wholeColumn,
  exact: values => values.reduce<Exact>((sum, value) => (value === undefined ? sum : sum.plus(value)), ZERO),
  quick: (cells, operands, out) =>
    added(
      cells,
      operands.filter(cell => isPresent(cells, cell)),
      out,
    ),
  live: (operands, out) => gathered(addPresent, operands, out),
  formula: context => call('SUM', context.range(0)),
  shown: values => values.flatMap((value, i) => (value === undefined ? [] : [i])),
  words: title => `what is known so far of ${title}`,
};

const count: Kind = {
  operation: 'count of known',
  cells: wholeColumn,
  exact: values => new Exact(values.filter(value => value !== undefined).length),
  quick: (cells, operands, out) =>
    cells.putWhole(out, operands.filter(cell => isPresent(cells, cell)).length, 0),
  live: (operands, out) => gathered(countPresent, operands, out),
  formula: context => call('COUNT', context.range(0)),
  shown: values => values.flatMap((value, i) => (value === undefined ? [] : [i])),
  words: title => `in how many rows ${title} is known`,
};

function overColumn<U extends StepUnit>(unit: U, kind: Kind, column: Step, looseness: Looseness): Step<U> {
  if (column.home === undefined || column.scope === undefined)
    throw new BugError(`${kind.operation}: ${nameOf(column)} is not a column of a table`);
  return makeSingle(unit, kind, [column], looseness);
}

function requireFixedUnit(column: Step): void {
  if (column.unit.includes('own'))
    throw new BugError(`total: the rows of ${nameOf(column)} are in units of their own and do not add up`);
}

/** The total of a column. One absent row makes the total absent. */
export function total<U extends SheetUnit>(column: Step<U>): Step<U> {
  requireFixedUnit(column);
  return overColumn(column.unit, whole, column, column.looseness);
}

/** What is known so far of a column: the sum of the rows that are present. Never call it the total. */
export function knownSoFar<U extends SheetUnit>(column: Step<U>): Step<U> {
  requireFixedUnit(column);
  return overColumn(column.unit, present, column, column.looseness);
}

/** In how many rows of a column there is a value. */
export function countKnown(column: Step): Step<'each'> {
  return overColumn('each', count, column, 0);
}
