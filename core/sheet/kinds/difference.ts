import { minus } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { two } from '../exactly';
import { subtracted, type Term } from '../formula/term';
import type { Kind } from '../kind';
import { loosest } from '../looseness';
import { operandOf } from '../quick/cells';
import { subtracted as subtract } from '../quick/operations';
import { makeStep, requireOneUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record: Kind = {
  operation: 'difference',
  exact: two((a, b) => a.minus(b)),
  quick: (cells, operands, out) => subtract(cells, operandOf(operands, 0), operandOf(operands, 1), out),
  live: ([a, b], out) => {
    const from = asTrials(a, out.length);
    const less = asTrials(b, out.length);
    return n => minus(out, from, less, n);
  },
  passes: ([, less]) => (less === 0 ? 0 : undefined),
  formula: (context): Term => subtracted(context.term(0), context.term(1)),
  words: (...titles) => titles.join(' − '),
};

/**
 * The first step less the second. Cancelled digits leave dust in binary arithmetic, so round a difference
 * before it is multiplied on its way to cents.
 */
export function difference<U extends SheetUnit>(from: Step<U>, less: Step<NoInfer<U>>): Step<U> {
  requireOneUnit('difference', [from, less]);
  return makeStep(from.unit, record, [from, less], loosest([from, less], 1));
}
