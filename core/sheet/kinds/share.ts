import { between } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { settle } from '../decimal';
import { call, multiplied, subtracted, type FormulaContext } from '../formula/term';
import type { Kind } from '../kind';
import { requireDigits, requireSettled } from '../looseness';
import { ABSENT, operandOf, tens } from '../quick/cells';
import { settled, settledProduct } from '../quick/settling';
import { makeStep, requireUnit, type Step } from '../step';

const record = (settledTo: number): Kind => ({
  operation: 'share',
  settings: { settledTo, digits: 2 },
  exact: ([amount, from, to]) => {
    if (amount === undefined || from === undefined || to === undefined) return undefined;
    const upTo = settle(amount.times(settle(to, settledTo)), 2);
    return upTo.minus(settle(amount.times(settle(from, settledTo)), 2));
  },
  quick: (cells, operands, out) => {
    const [amount, from, to] = [operandOf(operands, 0), operandOf(operands, 1), operandOf(operands, 2)];
    const decimals = cells.stateOf(amount);
    if (decimals < 0 || cells.stateOf(from) === ABSENT || cells.stateOf(to) === ABSENT) return false;
    const of = { whole: cells.mantissaOf(amount), decimals };
    const part = (through: number): boolean =>
      settled(cells, through, settledTo) &&
      settledProduct(cells, of, { whole: cells.whole, decimals: cells.places }, 2);
    if (!part(to)) return false;
    const upTo = cells.whole * tens(2 - cells.places);
    if (!part(from)) return false;
    const before = cells.whole * tens(2 - cells.places);
    if (!Number.isSafeInteger(upTo) || !Number.isSafeInteger(before)) return false;
    return cells.putWhole(out, upTo - before + 0, 2);
  },
  live: ([amount, from, to], out) => {
    const a = asTrials(amount, out.length);
    const f = asTrials(from, out.length);
    const t = asTrials(to, out.length);
    const factor = 10 ** settledTo;
    return n => between(out, a, f, t, factor, n);
  },
  formula: context => subtracted(upTo(context, 2, settledTo), upTo(context, 1, settledTo)),
  repeats: [0],
  words: (amount, from, to) => `${amount} from share ${from} to share ${to}, to the cent`,
});

function upTo(context: FormulaContext, share: number, settledTo: number) {
  const settled = call('ROUND', context.term(share), settledTo);
  return call('ROUND', multiplied([context.term(0), settled]), 2);
}

/**
 * The part of an amount between two running shares, by cumulative rounding: parts whose shares follow one
 * another from 0 to 1 add up to the amount to the cent.
 * @param settledTo decimals to which the shares are settled.
 */
export function share(
  amount: Step<'USD'>,
  before: Step<'1'>,
  through: Step<'1'>,
  settledTo = 10,
): Step<'USD'> {
  requireUnit('share', amount, 'USD');
  requireUnit('share', before, '1');
  requireUnit('share', through, '1');
  requireDigits('share', settledTo);
  requireSettled('a share', amount, 0);
  requireSettled('a share', before, 2);
  requireSettled('a share', through, 2);
  return makeStep('USD', record(settledTo), [amount, before, through], 0);
}
