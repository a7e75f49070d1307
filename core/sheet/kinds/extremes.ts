import { greatest, least } from '../columns/quick-kernels';
import { asTrials, inTurn } from '../columns/runs';
import { ZERO } from '../decimal';
import { folded } from '../exactly';
import { call } from '../formula/term';
import type { Kind, Operand, Run } from '../kind';
import { loosest } from '../looseness';
import { ABSENT, operandOf, type Cells } from '../quick/cells';
import { compared } from '../quick/operations';
import { makeStep, requireOneUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

type Kernel = (out: Float64Array, a: Float64Array, b: Float64Array, n: number) => void;

function chain(kernel: Kernel, operands: readonly Operand[], out: Float64Array): Run {
  const [first, ...rest] = operands.map(operand => asTrials(operand, out.length));
  if (first === undefined) return () => undefined;
  return inTurn([
    n => kernel(out, first, first, n),
    ...rest.map(
      (b): Run =>
        n =>
          kernel(out, out, b, n),
    ),
  ]);
}

/** The extreme of the operands; one absent and it is absent. */
function extreme(cells: Cells, operands: readonly number[], out: number, sign: 1 | -1): boolean {
  let best = operandOf(operands, 0);
  for (const cell of operands) {
    if (cells.stateOf(cell) === ABSENT) return cells.putAbsent(out);
    const apart = cell === best ? 0 : compared(cells, cell, best);
    if (apart === undefined) return false;
    if (apart * sign > 0) best = cell;
  }
  return cells.copy(out, best);
}

const smallest: Kind = {
  operation: 'minimum',
  exact: folded((a, b) => (b.lt(a) ? b : a), ZERO),
  quick: (cells, operands, out) => extreme(cells, operands, out, -1),
  live: (operands, out) => chain(least, operands, out),
  formula: context => call('MIN', ...context.terms()),
  words: (...titles) => `the least of ${titles.join(', ')}`,
};

const largest: Kind = {
  operation: 'maximum',
  exact: folded((a, b) => (b.gt(a) ? b : a), ZERO),
  quick: (cells, operands, out) => extreme(cells, operands, out, 1),
  live: (operands, out) => chain(greatest, operands, out),
  formula: context => call('MAX', ...context.terms()),
  words: (...titles) => `the greatest of ${titles.join(', ')}`,
};

/** The least of several steps of one unit: a cap. */
export function minimum<U extends SheetUnit>(first: Step<U>, ...rest: readonly Step<NoInfer<U>>[]): Step<U> {
  const steps = [first, ...rest];
  requireOneUnit('minimum', steps);
  return makeStep(first.unit, smallest, steps, loosest(steps));
}

/** The greatest of several steps of one unit: a minimum charge, or none below zero. */
export function maximum<U extends SheetUnit>(first: Step<U>, ...rest: readonly Step<NoInfer<U>>[]): Step<U> {
  const steps = [first, ...rest];
  requireOneUnit('maximum', steps);
  return makeStep(first.unit, largest, steps, loosest(steps));
}
