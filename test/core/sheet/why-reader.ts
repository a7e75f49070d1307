import Decimal from 'decimal.js';
import type { WhyTree } from '../../../core/sheet';

const Exact = Decimal.clone({ precision: 34, rounding: Decimal.ROUND_HALF_UP });
type Recompute = (inputs: Decimal[], step: WhyTree) => Decimal;

const setting = (step: WhyTree, name: string) => Number(step.settings?.[name]);
const at = (inputs: Decimal[], i: number): Decimal => inputs[i] ?? new Exact(NaN);
const all = (is: Recompute, ...names: string[]) => Object.fromEntries(names.map(name => [name, is]));
const add = (inputs: Decimal[]) => inputs.reduce((a, b) => a.plus(b), new Exact(0));
const settle = (x: Decimal, digits: number) => x.toSignificantDigits(15).toDecimalPlaces(digits);
const round: Recompute = (x, step) => settle(at(x, 0), setting(step, 'digits'));

// The printed operations and what they mean: all that this reader knows.
const OPERATIONS: Readonly<Record<string, Recompute>> = {
  ...all(add, 'sum', 'total', 'total where', 'known so far', 'running total'),
  ...all(x => at(x, 0), 'first present', 'link', 'carried'),
  ...all(x => at(x, 1), 'when', 'look-up', 'step look-up'),
  'count of known': x => new Exact(x.length),
  difference: x => at(x, 0).minus(at(x, 1)),
  product: x => x.reduce((a, b) => a.times(b), new Exact(1)),
  quotient: x => at(x, 0).div(at(x, 1)),
  power: x => new Exact(Math.pow(at(x, 0).toNumber(), at(x, 1).toNumber())),
  rounded: round,
  dollars: round,
  'whole up': (x, step) => settle(at(x, 0), setting(step, 'settledTo')).ceil(),
  'at least': (x, step) => {
    const settled = x.map(value => settle(value, setting(step, 'settledTo')));
    return new Exact(at(settled, 0).gte(at(settled, 1)) ? 1 : 0);
  },
  minimum: x => Exact.min(...x),
  maximum: x => Exact.max(...x),
  'grossed up': (x, step) => settle(at(x, 0).div(new Exact(1).minus(at(x, 1))), setting(step, 'digits')),
  share: (x, step) => {
    const upTo = (i: number) => settle(at(x, 0).times(settle(at(x, i), setting(step, 'settledTo'))), 2);
    return upTo(2).minus(upTo(1));
  },
};

/** Recomputes every printed value from its printed inputs; returns the ids whose value does not follow. */
export function misfits(tree: WhyTree): string[] {
  if (tree.seen === true || tree.value === null) return [];
  const inputs = tree.inputs ?? [];
  const below = inputs.flatMap(misfits);
  if (inputs.length === 0) return tree.basis === undefined ? [`${tree.id} has no basis`] : [];
  const recompute = OPERATIONS[tree.operation ?? ''];
  if (recompute === undefined) return [...below, `${tree.id}: ${tree.operation ?? ''} is not known`];
  const value = recompute(
    inputs.map(input => new Exact(input.value ?? NaN)),
    tree,
  ).toNumber();
  const fits = Math.abs(value - tree.value) <= 1e-9 * Math.max(1, Math.abs(tree.value));
  return fits
    ? below
    : [...below, `${tree.id}: ${tree.operation ?? ''} gives ${value}, printed ${tree.value}`];
}
