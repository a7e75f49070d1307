import { roundTo } from '../columns/quick-kernels';
import { asTrials, roundProduct } from '../columns/runs';
import { settle } from '../decimal';
import { one } from '../exactly';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { requireDigits, requireSettled } from '../looseness';
import { ABSENT, operandOf } from '../quick/cells';
import { settled } from '../quick/settling';
import { makeStep, requireUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

/** The record of rounding, for `rounded` and for `dollars`. */
const record = (operation: string, digits: number): Kind => ({
  operation,
  settings: { digits },
  exact: one(x => settle(x, digits)),
  quick: (cells, operands, out) => {
    const of = operandOf(operands, 0);
    if (cells.stateOf(of) === ABSENT) return cells.putAbsent(out);
    return settled(cells, of, digits) && cells.putWhole(out, cells.whole, cells.places);
  },
  live: ([a], out) => {
    const from = asTrials(a, out.length);
    const factor = 10 ** digits;
    return n => roundTo(out, from, factor, n);
  },
  overProduct: (factors, out) => roundProduct(factors, out, 10 ** digits),
  formula: context => call('ROUND', context.term(0), digits),
  words: title => `${title}, rounded ${operation === 'dollars' ? 'to the cent' : `to ${digits} decimals`}`,
});

const CENTS = record('dollars', 2);

/** Rounds to stated decimals, half away from zero. */
export function rounded<U extends SheetUnit>(of: Step<U>, digits: number): Step<U> {
  requireDigits('rounded', digits);
  return makeStep(of.unit, record('rounded', digits), [of], 0);
}

/**
 * Rounds money to the cent, half away from zero, credits too.
 * @throws BugError when a raw quotient or power reaches it.
 */
export function dollars(of: Step<'USD'>): Step<'USD'> {
  requireUnit('dollars', of, 'USD');
  requireSettled('cents', of, 1);
  return makeStep('USD', CENTS, [of], 0);
}
