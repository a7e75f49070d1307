import { choose } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { loosest, requireSettled } from '../looseness';
import { ABSENT, NEAR, operandOf, tens } from '../quick/cells';
import { makeStep, requireOneUnit, requireUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record: Kind = {
  operation: 'when',
  exact: ([condition, then, otherwise]) =>
    condition === undefined ? undefined : condition.eq(1) ? then : otherwise,
  quick: (cells, operands, out) => {
    const condition = operandOf(operands, 0);
    const state = cells.stateOf(condition);
    if (state === ABSENT) return cells.putAbsent(out);
    if (state === NEAR) return false;
    return cells.copy(out, operandOf(operands, cells.mantissaOf(condition) === tens(state) ? 1 : 2));
  },
  live: ([c, a, b], out) => {
    const condition = asTrials(c, out.length);
    const then = asTrials(a, out.length);
    const otherwise = asTrials(b, out.length);
    return n => choose(out, condition, then, otherwise, n);
  },
  passes: ([condition]) => {
    if (condition === undefined) return undefined;
    return Number.isNaN(condition) ? 0 : condition === 1 ? 1 : 2;
  },
  formula: context => call('IF', `${context.term(0).text}=1`, context.term(1), context.term(2)),
  shown: ([condition]) => (condition === undefined ? [0] : condition.eq(1) ? [0, 1] : [0, 2]),
  words: (condition, then, otherwise) => `${then} when ${condition} is 1, else ${otherwise}`,
};

/** The first branch where the condition is 1, else the second. A branch not taken may be absent. */
export function when<U extends SheetUnit>(
  condition: Step<'1'>,
  then: Step<U>,
  otherwise: Step<NoInfer<U>>,
): Step<U> {
  requireUnit('when', condition, '1');
  requireSettled('a condition', condition, 0);
  requireOneUnit('when', [then, otherwise]);
  return makeStep(then.unit, record, [condition, then, otherwise], loosest([then, otherwise]));
}
