import { Money } from './money';

export function plus(a: Money, b: Money): Money {
  return new Money(a.cents + b.cents);
}

export function minus(a: Money, b: Money): Money {
  return new Money(a.cents - b.cents);
}

export function negated(a: Money): Money {
  return new Money(-a.cents);
}

/** The sum, exact. @throws BugError beyond 90 trillion dollars. */
export function sumMoney(amounts: Iterable<Money>): Money {
  let cents = 0;
  for (const amount of amounts) cents += amount.cents;
  return new Money(cents);
}

/** Negative, zero or positive as the first is less than, equal to or greater than the second. */
export function compareMoney(a: Money, b: Money): number {
  return a.cents - b.cents;
}
