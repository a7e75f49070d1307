import { hashText } from '../../base';

/** What an index outside a typed array would read. Indices here are in range by construction. */
export const NONE = 0;

/**
 * Whole random numbers for the inside of the search, where a draw must cost a nanosecond: the same seed and
 * id give the same numbers on every machine.
 * @source G. Marsaglia, Xorshift RNGs, Journal of Statistical Software 8 (2003), the triple 13, 17, 5.
 */
export class Dice {
  private state: number;

  constructor(seed: number, id: string) {
    this.state = hashText(id, seed) | 1;
  }

  /** The next 32 random bits. */
  private bits(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x >>> 0;
  }

  /** A whole number from 0 to `count - 1`. */
  below(count: number): number {
    return Math.floor(this.bits() * 2.3283064365386963e-10 * count);
  }

  /** A number from 0 up to, not including, 1. */
  share(): number {
    return this.bits() * 2.3283064365386963e-10;
  }
}
