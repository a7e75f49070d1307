import { Exact, type Value } from '../decimal';
import { textOfWhole } from './text';

/** The state of a cell that has no value. */
export const ABSENT = -1;
/** The state of a cell known by a double within a stated error; its exact value is worked out when it is asked for. */
export const NEAR = -2;
/** Whole numbers up to here are exact in a double. */
export const MOST = Number.MAX_SAFE_INTEGER;
/** Powers of ten that are exact in a double. */
export const TENS: Float64Array = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
const MOST_DECIMALS = 22;
/** Twice the greatest relative error of one operation on doubles: room for the rounding of the error itself. */
export const DUST: number = 2 ** -52;
/** So few cells are copied one by one: views on the arrays cost more. */
const FEW = 8;
/** More than the least doubles can hide. */
export const TINY = 1e-300;

/**
 * The values of a sheet's cells, kept without an object for each. A cell is absent, or exact (a whole number of at most
 * 53 bits over a power of ten), or near: a double whose distance from the exact value is at most a known error.
 * Arithmetic on exact cells is arithmetic of whole numbers; a rounding, comparison or jump of a near cell is taken only
 * where the error leaves it certain, and is otherwise worked out in decimals. So no cell ever differs from the decimals.
 */
export class Cells {
  /** Of an exact cell the whole number; of a near one the double. */
  readonly mantissa: Float64Array;
  /** Of a near cell how far it may be from exact. */
  readonly error: Float64Array;
  /** Decimals of an exact cell; else its state. */
  readonly decimals: Int8Array;
  /** Exact values that were worked out in decimals. */
  readonly exact = new Map<number, Exact>();
  /** What the last settling came to: a whole number, and its decimals. */
  whole = 0;
  places = 0;

  constructor(size: number) {
    this.mantissa = new Float64Array(size);
    this.error = new Float64Array(size);
    this.decimals = new Int8Array(size).fill(ABSENT);
  }

  /** Decimals of an exact cell, or its state; a cell that does not exist is absent. */
  stateOf(cell: number): number {
    return this.decimals[cell] ?? ABSENT;
  }

  mantissaOf(cell: number): number {
    return this.mantissa[cell] ?? Number.NaN;
  }

  /** A present cell as a double: of an exact one the nearest there is. */
  near(cell: number): number {
    const state = this.stateOf(cell);
    return state > 0 ? this.mantissaOf(cell) / tens(state) : this.mantissaOf(cell);
  }

  /** How far the double of a present cell may be from its exact value. */
  errorOf(cell: number): number {
    const state = this.stateOf(cell);
    if (state === NEAR) return this.error[cell] ?? Number.NaN;
    return state === 0 ? 0 : Math.abs(this.near(cell)) * DUST + TINY;
  }

  putAbsent(out: number): true {
    this.decimals[out] = ABSENT;
    return true;
  }

  /** Puts a whole number over a power of ten; false when it does not fit. */
  putWhole(out: number, whole: number, decimals: number): boolean {
    if (!(Math.abs(whole) <= MOST) || decimals > MOST_DECIMALS) return false;
    this.mantissa[out] = whole;
    this.decimals[out] = decimals;
    return true;
  }

  /** Puts a double with its error; false when it is not finite. */
  putNear(out: number, value: number, error: number): boolean {
    if (!Number.isFinite(value) || !Number.isFinite(error)) return false;
    this.mantissa[out] = value;
    this.error[out] = error;
    this.decimals[out] = NEAR;
    return true;
  }

  /** Puts what an operand is, absent too. */
  copy(out: number, from: number, cells: Cells = this): true {
    this.decimals[out] = cells.stateOf(from);
    this.mantissa[out] = cells.mantissaOf(from);
    this.error[out] = cells.error[from] ?? 0;
    return true;
  }

  /** Takes a run of cells over from others. */
  take(from: Cells, first: number, to: number, count: number): void {
    if (count <= FEW) {
      for (let i = 0; i < count; i++) this.copy(to + i, first + i, from);
      return;
    }
    this.mantissa.set(from.mantissa.subarray(first, first + count), to);
    this.error.set(from.error.subarray(first, first + count), to);
    this.decimals.set(from.decimals.subarray(first, first + count), to);
  }

  /** Puts all these cells into others, from the first on. */
  into(cells: Cells, first: number): void {
    cells.mantissa.set(this.mantissa, first);
    cells.decimals.set(this.decimals, first);
  }

  /** Puts a value that was worked out in decimals. */
  putExact(out: number, value: Value): void {
    if (value === undefined) {
      this.decimals[out] = ABSENT;
      return;
    }
    const decimals = value.decimalPlaces();
    if (decimals <= MOST_DECIMALS && value.precision(true) <= 15) {
      const whole = Math.round(value.toNumber() * tens(decimals)) + 0;
      if (this.putWhole(out, whole, decimals) && this.exactWhole(out).eq(value)) return;
    }
    const near = value.toNumber();
    this.mantissa[out] = near;
    this.error[out] = Math.abs(near) * DUST + TINY;
    this.decimals[out] = NEAR;
    this.exact.set(out, value);
  }

  /** The decimal of an exact cell. */
  exactWhole(cell: number): Exact {
    const [whole, decimals] = [this.mantissaOf(cell), this.stateOf(cell)];
    return decimals === 0 ? new Exact(whole) : new Exact(textOfWhole(whole, decimals));
  }
}

/** The cell of an operand by its number; -1, which is absent, where there is none. */
export function operandOf(operands: readonly number[], number: number): number {
  return operands[number] ?? -1;
}

/** A power of ten. */
export function tens(exponent: number): number {
  return TENS[exponent] ?? Number.NaN;
}
