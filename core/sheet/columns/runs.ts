import { at, BugError } from '../../base';
import type { Operand, Run } from '../kind';
import { add1, add2, add3, add4, roundTimes1, roundTimes2, times1, times2 } from './quick-kernels';

/** An operand as an array of trials: a constant is written out once. */
export function asTrials(operand: Operand | undefined, length: number): Float64Array {
  if (operand instanceof Float64Array) return operand;
  return new Float64Array(length).fill(operand ?? NaN);
}

/** One after the other. */
export function inTurn(runs: readonly Run[]): Run {
  if (runs.length === 1) return at(runs, 0);
  return n => {
    for (const run of runs) run(n);
  };
}

/** The sum of operands: constants folded, up to four arrays a pass. */
export function addAll(operands: readonly Operand[], out: Float64Array): Run {
  const arrays = operands.filter(operand => operand instanceof Float64Array);
  const plus = operands.reduce<number>((sum, x) => (typeof x === 'number' ? sum + x : sum), 0);
  const [first, ...rest] = arrays;
  if (first === undefined) return n => void out.fill(plus, 0, n);
  const runs = [addFew(first, rest.slice(0, 3), out, plus)];
  for (let i = 3; i < rest.length; i += 3) runs.push(addFew(out, rest.slice(i, i + 3), out, 0));
  return inTurn(runs);
}

function addFew(a: Float64Array, rest: readonly Float64Array[], out: Float64Array, plus: number): Run {
  const [b, c, d] = rest;
  if (b === undefined) return n => add1(out, a, plus, n);
  if (c === undefined) return n => add2(out, a, b, plus, n);
  if (d === undefined) return n => add3(out, a, b, c, plus, n);
  return n => add4(out, a, b, c, d, plus, n);
}

/** The product of operands: constants folded, two arrays a pass. */
export function multiplyAll(operands: readonly Operand[], out: Float64Array): Run {
  const arrays = operands.filter(operand => operand instanceof Float64Array);
  const factor = operands.reduce<number>((all, x) => (typeof x === 'number' ? all * x : all), 1);
  const [a, b, ...rest] = arrays;
  if (a === undefined) return n => void out.fill(factor, 0, n);
  if (b === undefined) return n => times1(out, a, factor, n);
  return inTurn([
    n => times2(out, a, b, factor, n),
    ...rest.map(
      (c): Run =>
        n =>
          times2(out, out, c, 1, n),
    ),
  ]);
}

/** The one operand unchanged. */
export function passOn(operands: readonly Operand[], out: Float64Array): Run {
  const [from] = operands;
  if (from instanceof Float64Array) return n => add1(out, from, 0, n);
  return n => void out.fill(from ?? NaN, 0, n);
}

/**
 * A product of one or two varying operands, rounded to the factor's decimals in one pass.
 * @throws BugError when none varies, or more.
 */
export function roundProduct(operands: readonly Operand[], out: Float64Array, to: number): Run {
  const arrays = operands.filter(operand => operand instanceof Float64Array);
  const by = operands.reduce<number>((all, x) => (typeof x === 'number' ? all * x : all), 1);
  const [a, b, more] = arrays;
  if (a === undefined || more !== undefined)
    throw new BugError(`a product of ${arrays.length} that vary is not rounded in one pass`);
  if (b === undefined) return n => roundTimes1(out, a, by, to, n);
  return n => roundTimes2(out, a, b, by, to, n);
}
