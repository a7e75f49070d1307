import { BugError } from '../base';
import type { Value } from './decimal';
import type { Order } from './order';
import type { SheetResult } from './result';

/** What the readings of a result work on; the arithmetic stays inside this module. */
export interface Inner {
  readonly order: Order;
  /** The exact value of every cell. */
  readonly values: readonly Value[];
}

const INNER = new WeakMap<SheetResult, Inner>();

export function keepInner(result: SheetResult, inner: Inner): void {
  INNER.set(result, inner);
}

export function innerOf(result: SheetResult): Inner {
  const inner = INNER.get(result);
  if (inner === undefined) throw new BugError('this result was not made by evaluateSheet');
  return inner;
}
