import type { Exact, Value } from './decimal';

/** An exact rule of one operand: absent in, absent out. */
export function one(rule: (x: Exact) => Value): (values: readonly Value[]) => Value {
  return ([x]) => (x === undefined ? undefined : rule(x));
}

/** An exact rule of two operands: either absent, absent out. */
export function two(rule: (a: Exact, b: Exact) => Value): (values: readonly Value[]) => Value {
  return ([a, b]) => (a === undefined || b === undefined ? undefined : rule(a, b));
}

/** An exact rule folded over any number of operands: one absent, absent out. */
export function folded(
  rule: (a: Exact, b: Exact) => Exact,
  empty: Exact,
): (values: readonly Value[]) => Value {
  return values => {
    let result: Value;
    for (const value of values) {
      if (value === undefined) return undefined;
      result = result === undefined ? value : rule(result, value);
    }
    return result ?? empty;
  };
}
