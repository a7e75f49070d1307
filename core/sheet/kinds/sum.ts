import { addAll } from '../columns/runs';
import { ZERO, plus } from '../decimal';
import { folded } from '../exactly';
import { added } from '../formula/term';
import type { Kind } from '../kind';
import { onlyOther } from '../only-other';
import { loosest } from '../looseness';
import { added as add } from '../quick/operations';
import { makeStep, requireOneUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record: Kind = {
  operation: 'sum',
  exact: folded(plus, ZERO),
  quick: (cells, operands, out) => add(cells, operands, out),
  live: addAll,
  passes: constants => onlyOther(constants, 0),
  formula: context => added(context.terms()),
  words: (...titles) => titles.join(' + '),
};

/** The sum of steps of one unit. */
export function sum<U extends SheetUnit>(first: Step<U>, ...rest: readonly Step<NoInfer<U>>[]): Step<U> {
  const steps = [first, ...rest];
  requireOneUnit('sum', steps);
  return makeStep(first.unit, record, steps, loosest(steps));
}
