import type { Operand, Run } from '../kind';
import type { Order } from '../order';
import { Buffers } from './buffers';
import type { Roots, Varying } from './live';

/** What the binding of steps to arrays needs to know of the cells. */
export interface LiveCells {
  readonly order: Order;
  readonly live: Uint8Array;
  readonly varying: Varying;
  readonly rootOf: Roots;
  readonly constantOf: (cell: number) => number;
}

/** Binds each live step to its arrays, lending arrays again after their last use. */
export class Binding {
  readonly runs: readonly Run[];
  readonly #cells: LiveCells;
  readonly #kept: ReadonlySet<number>;
  readonly #batch: number;
  readonly #buffers: Buffers;
  /** By cell: the place in the sequence after which nothing reads it. */
  readonly #lastUse = new Map<number, number>();
  readonly #uses = new Map<number, number>();

  constructor(cells: LiveCells, sequence: readonly number[], kept: ReadonlySet<number>, batch: number) {
    this.#cells = cells;
    this.#kept = kept;
    this.#batch = batch;
    this.#buffers = new Buffers(batch);
    for (const cell of sequence)
      for (const operand of this.#operandsOf(cell))
        this.#uses.set(operand, (this.#uses.get(operand) ?? 0) + 1);
    const fused = new Set(sequence.map(cell => this.#under(cell)?.product));
    const kernels = sequence.filter(cell => !fused.has(cell));
    kernels.forEach((cell, i) => {
      for (const operand of this.#read(cell)) this.#lastUse.set(operand, i);
    });
    this.runs = kernels.map((cell, i) => this.#bind(cell, i));
  }

  /** Bytes of the arrays that steps write to. */
  get bytes(): number {
    return this.#buffers.bytes;
  }

  /** The array of a kept cell; of one that does not vary, filled. */
  arrayOf(cell: number): Float64Array {
    const { varying, constantOf } = this.#cells;
    return (
      varying.get(cell) ?? this.#buffers.of(cell) ?? new Float64Array(this.#batch).fill(constantOf(cell))
    );
  }

  #bind(cell: number, place: number): Run {
    const { kind } = this.#at(cell).step;
    const read = this.#read(cell);
    const out = this.#buffers.lend(cell);
    const operands = read.map(operand => this.#operand(operand));
    const run = this.#under(cell)?.run ?? kind.live;
    for (const operand of new Set(read)) {
      const isDone = this.#lastUse.get(operand) === place && !this.#kept.has(operand);
      if (isDone && this.#buffers.of(operand)) this.#buffers.giveBack(operand);
    }
    return run(operands, out);
  }

  /** The product that a rounding takes in one pass: a hidden one of at most two varying factors, used once. */
  #under(cell: number) {
    const { live, varying } = this.#cells;
    const run = this.#at(cell).step.kind.overProduct;
    const [product] = this.#operandsOf(cell);
    if (run === undefined || product === undefined || live[product] !== 1) return undefined;
    if (varying.has(product) || this.#kept.has(product) || this.#uses.get(product) !== 1) return undefined;
    if (this.#at(product).step.kind.operation !== 'product') return undefined;
    const arrays = this.#operandsOf(product).filter(operand => live[operand] === 1);
    return arrays.length === 1 || arrays.length === 2 ? { product, run } : undefined;
  }

  /** The cells a kernel reads: its operands, or the factors of the product it takes in. */
  #read(cell: number): readonly number[] {
    return this.#operandsOf(this.#under(cell)?.product ?? cell);
  }

  #operandsOf(cell: number): readonly number[] {
    const { order, rootOf } = this.#cells;
    const { step, row } = this.#at(cell);
    return order.operands(step, row).map(rootOf);
  }

  #operand(cell: number): Operand {
    const { live, varying, constantOf } = this.#cells;
    if (cell < 0 || live[cell] !== 1) return constantOf(cell);
    return varying.get(cell) ?? this.#buffers.held(cell);
  }

  #at(cell: number) {
    return this.#cells.order.at(cell);
  }
}
