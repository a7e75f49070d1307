import { grossUp } from '../columns/kernels';
import { asTrials } from '../columns/runs';
import { ONE, settle } from '../decimal';
import { two } from '../exactly';
import { atom, call, divided, held } from '../formula/term';
import type { Kind } from '../kind';
import { requireDigits, requireSettled } from '../looseness';
import { makeStep, requireUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record = (digits: number): Kind => ({
  operation: 'grossed up',
  settings: { digits },
  exact: two((base, part) => (part.lt(1) ? settle(base.div(ONE.minus(part)), digits) : undefined)),
  reason: () => 'a share of itself of 1 or more has no end',
  live: ([a, p], out) => {
    const base = asTrials(a, out.length);
    const part = asTrials(p, out.length);
    return n => grossUp(out, base, part, 10 ** digits, n);
  },
  formula: context =>
    call('ROUND', divided(context.term(0), atom(`(1-${held(context.term(1), 2)})`)), digits),
  words: (base, part) => `${base} ÷ (1 − ${part})`,
});

/**
 * The whole of which a share is a percentage of the whole itself, such as a bond on the total with the bond:
 * x ÷ (1 − p), rounded to stated decimals; never by iteration.
 */
export function grossedUp<U extends SheetUnit>(base: Step<U>, part: Step<'1'>, digits: number): Step<U> {
  requireUnit('grossed up', part, '1');
  requireDigits('grossed up', digits);
  requireSettled('grossed up', base, 2);
  requireSettled('grossed up', part, 2);
  return makeStep(base.unit, record(digits), [base, part], 0);
}
