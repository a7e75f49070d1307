import { at } from '../../base';
import type { Order } from '../order';
import { rowsOf } from '../order';
import type { Step } from '../step';

/**
 * The values of cells that no trial moves, where some givens stand at another constant than the exact one: what
 * depends on those is calculated once, the rest keeps its exact value.
 */
export class SettledValues {
  readonly #settled: Map<number, number>;
  readonly #exactOf: (cell: number) => number;
  readonly #out = new Float64Array(1);

  /** @param constants by cell, the values that stand instead. @param exactOf the exact value of a cell. */
  constructor(constants: ReadonlyMap<number, number>, exactOf: (cell: number) => number) {
    this.#settled = new Map(constants);
    this.#exactOf = exactOf;
  }

  readonly valueOf = (cell: number): number => this.#settled.get(cell) ?? this.#exactOf(cell);

  /** Settles a cell from its operands, where any of them stands at another value than the exact one. */
  settle(cell: number, step: Step, operands: readonly number[]): void {
    if (!operands.some(operand => this.#settled.has(operand))) return;
    step.kind.live(operands.map(this.valueOf), this.#out)(1);
    this.#settled.set(cell, at(this.#out, 0));
  }

  /** Settles all cells that do not vary. */
  settleAll(order: Order, live: Uint8Array): void {
    if (this.#settled.size === 0) return;
    for (const step of order.steps) {
      for (let row = 0; row < rowsOf(step); row++) {
        const cell = order.cell(step, row);
        if (live[cell] !== 1) this.settle(cell, step, order.operands(step, row));
      }
    }
  }
}
