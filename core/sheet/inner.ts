import { BugError } from '../base';
import type { Exact, Value } from './decimal';
import type { Order } from './order';
import { ABSENT, NEAR, tens, type Cells } from './quick/cells';
import { textOfWhole } from './quick/text';
import type { SheetResult } from './result';

/** What the readings of a result work on; the arithmetic stays inside this module. */
export class Inner {
  readonly order: Order;
  readonly cells: Cells;

  constructor(order: Order, cells: Cells) {
    this.order = order;
    this.cells = cells;
  }

  isAbsent(cell: number): boolean {
    return this.cells.stateOf(cell) === ABSENT;
  }

  /** The exact value of a cell. One known by a double so far is worked out in decimals, once. */
  value(cell: number): Value {
    const state = this.cells.stateOf(cell);
    if (state === ABSENT) return undefined;
    return state === NEAR ? this.#workedOut(cell) : this.cells.exactWhole(cell);
  }

  /** The exact value of a cell as a double; undefined when absent. */
  number(cell: number): number | undefined {
    const state = this.cells.stateOf(cell);
    if (state === ABSENT) return undefined;
    return state === NEAR ? this.#workedOut(cell).toNumber() + 0 : this.cells.near(cell);
  }

  /** Whether a cell is exactly a small whole number. */
  equals(cell: number, whole: number): boolean {
    const state = this.cells.stateOf(cell);
    if (state >= 0) return this.cells.mantissaOf(cell) === whole * tens(state);
    return this.value(cell)?.eq(whole) === true;
  }

  /** The exact value of a cell as plain decimal text; undefined when absent. */
  text(cell: number): string | undefined {
    const { cells } = this;
    const state = cells.stateOf(cell);
    return state >= 0 ? textOfWhole(cells.mantissaOf(cell), state) : this.value(cell)?.toFixed();
  }

  /** The exact values of the operands of a cell. */
  values(operands: readonly number[]): Value[] {
    return operands.map(operand => this.value(operand));
  }

  #workedOut(cell: number): Exact {
    const known = this.cells.exact.get(cell);
    if (known !== undefined) return known;
    const { step, row } = this.order.at(cell);
    const value = step.kind.exact(this.values(this.order.operands(step, row)), row);
    if (value === undefined) throw new BugError(`cell ${cell} has a near value and no exact one`);
    this.cells.exact.set(cell, value);
    return value;
  }
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
