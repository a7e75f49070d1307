import { power as raise } from '../columns/kernels';
import { sharedPowers } from '../columns/powers';
import { asTrials } from '../columns/runs';
import { Exact } from '../decimal';
import { two } from '../exactly';
import { call } from '../formula/term';
import type { Kind } from '../kind';
import { DUST, operandOf } from '../quick/cells';
import { makeStep, requireUnit, type Step } from '../step';

const record: Kind = {
  operation: 'power',
  exact: two((base, exponent) => {
    const y = Math.pow(base.toNumber(), exponent.toNumber());
    return Number.isFinite(y) ? new Exact(y) : undefined;
  }),
  quick: (cells, operands, out) => {
    const [base, exponent] = [operandOf(operands, 0), operandOf(operands, 1)];
    if (cells.stateOf(base) < 0 || cells.stateOf(exponent) < 0) return false;
    const y = Math.pow(cells.near(base), cells.near(exponent));
    if (Number.isSafeInteger(y)) return cells.putWhole(out, y + 0, 0);
    return cells.putNear(out, y, Math.abs(y) * DUST);
  },
  reason: () => 'the power has no finite value',
  live: ([a, b], out) => {
    if (a instanceof Float64Array && b instanceof Float64Array) return sharedPowers(out, a, b);
    const base = asTrials(a, out.length);
    const exponent = asTrials(b, out.length);
    return n => raise(out, base, exponent, n);
  },
  formula: context => call('POWER', context.term(0), context.term(1)),
  words: (...titles) => titles.join(' to the power '),
};

/**
 * A ratio to a power, as cost relationships use it. It is a double in every reading, the exact one too, and
 * must be rounded to stated decimals before it goes further.
 */
export function power(base: Step<'1'>, exponent: Step<'1'>): Step<'1'> {
  requireUnit('power', base, '1');
  requireUnit('power', exponent, '1');
  return makeStep('1', record, [base, exponent], 3);
}
