import { roundUp } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { settle } from '../decimal';
import { one } from '../exactly';
import type { Kind } from '../kind';
import { requireDigits, requireSettled } from '../looseness';
import { ABSENT, operandOf } from '../quick/cells';
import { settled, wholeAbove } from '../quick/settling';
import { makeStep, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record = (settledTo: number): Kind => ({
  operation: 'whole up',
  settings: { settledTo },
  exact: one(x => settle(x, settledTo).ceil()),
  quick: (cells, operands, out) => {
    const of = operandOf(operands, 0);
    if (cells.stateOf(of) === ABSENT) return cells.putAbsent(out);
    if (!settled(cells, of, settledTo)) return false;
    return cells.putWhole(out, wholeAbove(cells.whole, cells.places), 0);
  },
  live: ([a], out) => {
    const from = asTrials(a, out.length);
    return n => roundUp(out, from, 10 ** settledTo, n);
  },
  formula: context => ({ text: `-INT(-ROUND(${context.term(0).text},${settledTo}))`, binding: 1 }),
  words: title => `${title}, up to a whole number`,
});

/**
 * Whole containers, trips, crews: settles to stated decimals, then goes up to the next whole number, so that
 * an exact number of containers reached by a detour stays that number.
 */
export function wholeUp<U extends SheetUnit>(of: Step<U>, settledTo: number): Step<U> {
  requireDigits('whole up', settledTo);
  requireSettled('whole up', of, 2);
  return makeStep(of.unit, record(settledTo), [of], 0);
}
