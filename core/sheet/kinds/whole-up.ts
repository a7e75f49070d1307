import { roundUp } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { settle } from '../decimal';
import { one } from '../exactly';
import type { Kind } from '../kind';
import { requireDigits, requireSettled } from '../looseness';
import { ABSENT } from '../quick/cells';
import { settled, wholeAbove } from '../quick/settling';
import { makeStep, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record = (settledTo: number): Kind => ({
  operation: 'whole up',
  settings: { settledTo },
  exact: one(x => settle(x, settledTo).ceil()),
  quick: (cells, [of = -1], out) => {
    if (cells.stateOf(of) === ABSENT) return cells.putAbsent(out);
    if (!settled(cells, of, settledTo)) return false;
    const up = wholeAbove(cells.whole, cells.places);
    return up !== undefined && cells.putWhole(out, up, 0);
  },
  live: ([a], out) => {
    const from = asTrials(a, out.length);
    return n => roundUp(out, from, 10 ** settledTo, n);
  },
  formula: context => ({ text: `-INT(-ROUND(${context.term(0).text},${settledTo}))`, binding: 1 }),
  words: ([title]) => `${title ?? ''}, up to a whole number`,
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
