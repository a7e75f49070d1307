import { reaches } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { ONE, ZERO, settle } from '../decimal';
import { two } from '../exactly';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { requireDigits, requireSettled } from '../looseness';
import { ABSENT, operandOf } from '../quick/cells';
import { comparedWhole } from '../quick/operations';
import { settled } from '../quick/settling';
import { makeStep, requireOneUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record = (settledTo: number): Kind => ({
  operation: 'at least',
  settings: { settledTo },
  exact: two((a, b) => (settle(a, settledTo).gte(settle(b, settledTo)) ? ONE : ZERO)),
  quick: (cells, operands, out) => {
    const [a, b] = [operandOf(operands, 0), operandOf(operands, 1)];
    if (cells.stateOf(a) === ABSENT || cells.stateOf(b) === ABSENT) return cells.putAbsent(out);
    if (!settled(cells, a, settledTo)) return false;
    const { whole, places } = cells;
    if (!settled(cells, b, settledTo)) return false;
    const apart = comparedWhole(whole, places, cells.whole, cells.places);
    return apart !== undefined && cells.putWhole(out, apart >= 0 ? 1 : 0, 0);
  },
  live: ([a, b], out) => {
    const value = asTrials(a, out.length);
    const bound = asTrials(b, out.length);
    return n => reaches(out, value, bound, 10 ** settledTo, n);
  },
  formula: context => {
    const settled = (input: number) => call('ROUND', context.term(input), settledTo).text;
    return call('IF', `${settled(0)}>=${settled(1)}`, 1, 0);
  },
  words: (...titles) => `1 when ${titles.join(' is at least ')}, else 0`,
});

/** 1 when the first is at least the second, both settled to stated decimals, else 0: a trip-point is reached. */
export function atLeast<U extends SheetUnit>(
  value: Step<U>,
  bound: Step<NoInfer<U>>,
  settledTo: number,
): Step<'1'> {
  requireOneUnit('at least', [value, bound]);
  requireDigits('at least', settledTo);
  requireSettled('at least', value, 2);
  requireSettled('at least', bound, 2);
  return makeStep('1', record(settledTo), [value, bound], 0);
}
