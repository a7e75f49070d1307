import { at, BugError } from '../base';
import type { Step } from './step';

/**
 * How far a step's value may stray from exact in its last digits, decided when the recipe is built:
 * 0 settled (given, rounded, or a product of such); 1 a difference (cancelled digits leave dust);
 * 2 a quotient, or a product with a difference; 3 a power. What may stray reaches cents, a jump or a key
 * only through a stated rounding.
 */
export type Looseness = 0 | 1 | 2 | 3;

export function loosest(steps: readonly Step[], atLeast: Looseness = 0): Looseness {
  return steps.reduce<Looseness>((most, step) => (step.looseness > most ? step.looseness : most), atLeast);
}

/** A product carries a difference's dust on, scaled up: it counts as a quotient. */
export function loosenessOfProduct(steps: readonly Step[]): Looseness {
  const most = loosest(steps);
  return most === 1 ? 2 : most;
}

/** By looseness, from 1 on. */
const NAMES = ['a difference', 'a raw quotient', 'a raw power'];

/** @throws BugError when a step strays more than the operation can bear. */
export function requireSettled(operation: string, step: Step, bears: Looseness): void {
  if (step.looseness > bears)
    throw new BugError(
      `${at(NAMES, step.looseness - 1)} (${step.home?.title ?? step.kind.operation}) reaches ${operation}: round it first`,
    );
}

/** @throws BugError unless digits is a whole number from 0 to 10. */
export function requireDigits(operation: string, digits: number): void {
  if (!Number.isInteger(digits) || digits < 0 || digits > 10)
    throw new BugError(`${operation}: ${digits} is not a number of decimals from 0 to 10`);
}
