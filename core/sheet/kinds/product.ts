import { multiplyAll } from '../columns/runs';
import { ONE, times as exactTimes } from '../decimal';
import { folded } from '../exactly';
import { multiplied } from '../formula/term';
import type { Kind } from '../kind';
import { onlyOther } from '../only-other';
import { loosenessOfProduct } from '../looseness';
import { multiplied as multiply } from '../quick/operations';
import { makeStep, requireUnit, type Step } from '../step';
import { pricedUnit, productUnit, type BaseUnit, type Product, type SheetUnit, type Top } from '../unit';

const record: Kind = {
  operation: 'product',
  exact: folded(exactTimes, ONE),
  quick: multiply,
  live: multiplyAll,
  passes: constants => onlyOther(constants, 1),
  formula: context => multiplied(context.terms()),
  words: (...titles) => titles.join(' × '),
};

function product<U extends SheetUnit>(unit: U, steps: readonly Step[]): Step<U> {
  return makeStep(unit, record, steps, loosenessOfProduct(steps));
}

/** A step times factors and shares; its unit stays. */
export function scaled<U extends SheetUnit>(of: Step<U>, ...factors: readonly Step<'1'>[]): Step<U> {
  for (const factor of factors) requireUnit('scaled', factor, '1');
  return product(of.unit, [of, ...factors]);
}

/**
 * Quantity times rate, and factors: hours at dollars an hour are dollars.
 * @example priced(hours, crewRate, escalation)
 */
export function priced<B extends BaseUnit, R extends `${BaseUnit}/${B}`>(
  quantity: Step<B>,
  rate: Step<R>,
  ...factors: readonly Step<'1'>[]
): Step<Top<R>>;
export function priced(quantity: Step, rate: Step, ...factors: readonly Step<'1'>[]): Step<SheetUnit> {
  for (const factor of factors) requireUnit('priced', factor, '1');
  return product(pricedUnit(quantity.unit, rate.unit), [quantity, rate, ...factors]);
}

/** Lengths into areas, areas into volumes, knots and hours into miles. */
export function times<A extends SheetUnit, B extends SheetUnit>(a: Step<A>, b: Step<B>): Step<Product<A, B>>;
export function times(a: Step, b: Step): Step<SheetUnit> {
  return product(productUnit(a.unit, b.unit), [a, b]);
}
