import { known } from '../../base';

/**
 * The arrays that live steps write to. An array is lent to another step as soon as no later step reads it;
 * the last one given back is lent first. Kept arrays are never lent again.
 */
export class Buffers {
  readonly #length: number;
  readonly #free: Float64Array[] = [];
  readonly #held = new Map<number, Float64Array>();
  #made = 0;

  constructor(length: number) {
    this.#length = length;
  }

  /** How many bytes all arrays take. */
  get bytes(): number {
    return this.#made * this.#length * Float64Array.BYTES_PER_ELEMENT;
  }

  lend(cell: number): Float64Array {
    const free = this.#free.pop();
    if (free === undefined) this.#made++;
    const array = free ?? new Float64Array(this.#length);
    this.#held.set(cell, array);
    return array;
  }

  /** @throws BugError when the cell holds none. */
  giveBack(cell: number): void {
    this.#free.push(this.held(cell));
    this.#held.delete(cell);
  }

  /** The array of a cell that was lent one. @throws BugError when the cell holds none. */
  held(cell: number): Float64Array {
    return known(this.#held, cell);
  }

  of(cell: number): Float64Array | undefined {
    return this.#held.get(cell);
  }
}
