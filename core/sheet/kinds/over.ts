import { over as divide } from '../columns/kernels';
import { overConstant } from '../columns/quick-kernels';
import { asTrials } from '../columns/runs';
import { two } from '../exactly';
import { divided } from '../formula/term';
import type { Kind } from '../kind';
import { loosest } from '../looseness';
import { operandOf } from '../quick/cells';
import { dividedBy } from '../quick/operations';
import { makeStep, type Step } from '../step';
import { quotientUnit, type BaseUnit, type Bottom, type Side, type SheetUnit } from '../unit';

const record: Kind = {
  operation: 'quotient',
  exact: two((a, b) => (b.isZero() ? undefined : a.div(b))),
  quick: (cells, operands, out) => dividedBy(cells, operandOf(operands, 0), operandOf(operands, 1), out),
  reason: () => 'the division is by zero',
  live: ([a, b], out) => {
    const top = asTrials(a, out.length);
    if (typeof b === 'number') return n => overConstant(out, top, b === 0 ? NaN : b, n);
    const by = asTrials(b, out.length);
    return n => divide(out, top, by, n);
  },
  passes: ([, by]) => (by === 1 ? 0 : undefined),
  formula: context => divided(context.term(0), context.term(1)),
  words: (...titles) => titles.join(' ÷ '),
};

/**
 * A quotient: a quantity over a production rate is hours, one amount over another of its unit a share, a
 * quantity over a plain unit a rate. Division by zero is absent with a finding. Round it before it reaches
 * cents.
 */
export function over<U extends BaseUnit, R extends `${U}/${BaseUnit}`>(
  a: Step<U>,
  rate: Step<R>,
): Step<Bottom<R>>;
export function over<U extends SheetUnit>(a: Step<U>, by: Step<'1'>): Step<U>;
export function over<U extends SheetUnit>(a: Step<U>, by: Step<NoInfer<U>>): Step<'1'>;
export function over<A extends BaseUnit, B extends BaseUnit>(a: Step<A>, by: Step<B>): Step<Quotient<A, B>>;
export function over(a: Step, by: Step): Step<SheetUnit> {
  return makeStep(quotientUnit(a.unit, by.unit), record, [a, by], loosest([a, by], 2));
}

/** The unit of a measure over a plain unit: its other side where it has one, a rate where not. */
type Quotient<A extends BaseUnit, B extends BaseUnit> = [Side<A, B>] extends [never]
  ? Extract<SheetUnit, `${A}/${B}`>
  : Side<A, B>;
