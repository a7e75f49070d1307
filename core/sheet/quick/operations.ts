import { ABSENT, DUST, MOST, NEAR, TINY, operandOf, tens, type Cells } from './cells';

/** The sum of cells, one absent and it is absent. */
export function added(cells: Cells, operands: readonly number[], out: number, fromOperand = 0): boolean {
  let whole = 0;
  let decimals = 0;
  for (let i = fromOperand; i < operands.length; i++) {
    const cell = operandOf(operands, i);
    const state = cells.stateOf(cell);
    if (state === ABSENT) return cells.putAbsent(out);
    if (state === NEAR) return addedNear(cells, operands, out, fromOperand);
    let next = cells.mantissaOf(cell);
    if (state < decimals) next *= tens(decimals - state);
    else if (state > decimals) {
      whole *= tens(state - decimals);
      decimals = state;
    }
    const isExact = Math.abs(next) <= MOST && Math.abs(whole) <= MOST;
    whole += next;
    if (!isExact || !(Math.abs(whole) <= MOST)) return addedNear(cells, operands, out, fromOperand);
  }
  return cells.putWhole(out, whole + 0, decimals);
}

function addedNear(cells: Cells, operands: readonly number[], out: number, fromOperand: number): boolean {
  let value = 0;
  let error = 0;
  for (let i = fromOperand; i < operands.length; i++) {
    const cell = operandOf(operands, i);
    if (cells.stateOf(cell) === ABSENT) return cells.putAbsent(out);
    value += cells.near(cell);
    error += cells.errorOf(cell) + Math.abs(value) * DUST + TINY;
  }
  return cells.putNear(out, value, error * (1 + DUST * operands.length));
}

/** The first less the second. */
export function subtracted(cells: Cells, from: number, less: number, out: number): boolean {
  const [a, b] = [cells.stateOf(from), cells.stateOf(less)];
  if (a === ABSENT || b === ABSENT) return cells.putAbsent(out);
  if (a >= 0 && b >= 0) {
    const decimals = Math.max(a, b);
    const first = cells.mantissaOf(from) * tens(decimals - a);
    const second = cells.mantissaOf(less) * tens(decimals - b);
    if (
      Math.abs(first) <= MOST &&
      Math.abs(second) <= MOST &&
      cells.putWhole(out, first - second + 0, decimals)
    )
      return true;
  }
  const value = cells.near(from) - cells.near(less);
  const error = cells.errorOf(from) + cells.errorOf(less) + Math.abs(value) * DUST + TINY;
  return cells.putNear(out, value, error * (1 + 8 * DUST));
}

/** The product of cells, one absent and it is absent; one nothing and it is nothing. */
export function multiplied(cells: Cells, operands: readonly number[], out: number): boolean {
  let whole = 1;
  let decimals = 0;
  let isWhole = true;
  let isNothing = false;
  for (const cell of operands) {
    const state = cells.stateOf(cell);
    if (state === ABSENT) return cells.putAbsent(out);
    if (state === NEAR) isWhole = false;
    else if (cells.mantissaOf(cell) === 0) isNothing = true;
    else if (isWhole) {
      whole *= cells.mantissaOf(cell);
      decimals += state;
      if (!(Math.abs(whole) <= MOST)) isWhole = false;
    }
  }
  if (isNothing) return cells.putWhole(out, 0, 0);
  if (isWhole && cells.putWhole(out, whole, decimals)) return true;
  return multipliedNear(cells, operands, out);
}

function multipliedNear(cells: Cells, operands: readonly number[], out: number): boolean {
  let value = 1;
  let error = 0;
  for (const cell of operands) {
    const [next, off] = [cells.near(cell), cells.errorOf(cell)];
    const product = value * next;
    error = Math.abs(value) * off + Math.abs(next) * error + error * off + Math.abs(product) * DUST + TINY;
    value = product;
  }
  return cells.putNear(out, value, error * (1 + 8 * DUST));
}

/** The first over the second; false where the second may be nothing. */
export function dividedBy(cells: Cells, top: number, by: number, out: number): boolean {
  const [a, b] = [cells.stateOf(top), cells.stateOf(by)];
  if (a === ABSENT || b === ABSENT) return cells.putAbsent(out);
  if (a >= 0 && b >= 0) {
    const [x, y] = [cells.mantissaOf(top), cells.mantissaOf(by)];
    if (y === 0) return false;
    const quotient = x / y;
    if (Number.isInteger(quotient) && quotient * y === x && Math.abs(quotient) <= MOST) {
      if (a >= b) return cells.putWhole(out, quotient + 0, a - b);
      if (cells.putWhole(out, quotient * tens(b - a) + 0, 0)) return true;
    }
  }
  const [value, divisor] = [cells.near(top), cells.near(by)];
  const off = cells.errorOf(by);
  const least = Math.abs(divisor) - off;
  if (!(least > Math.abs(divisor) / 2)) return false;
  const quotient = value / divisor;
  const error = (cells.errorOf(top) + Math.abs(quotient) * off) / least + Math.abs(quotient) * DUST + TINY;
  return cells.putNear(out, quotient, error * (1 + 8 * DUST));
}

/**
 * How two present cells compare: below 0, 0 or above 0.
 * @returns undefined where the doubles cannot tell.
 */
export function compared(cells: Cells, first: number, second: number): number | undefined {
  const [a, b] = [cells.stateOf(first), cells.stateOf(second)];
  if (a >= 0 && b >= 0) return comparedWhole(cells.mantissaOf(first), a, cells.mantissaOf(second), b);
  const apart = cells.near(first) - cells.near(second);
  const error = cells.errorOf(first) + cells.errorOf(second);
  return Math.abs(apart) > error * (1 + 9 * DUST) ? apart : undefined;
}

/** How two whole numbers over powers of ten compare; undefined where they do not fit. */
export function comparedWhole(
  a: number,
  aDecimals: number,
  b: number,
  bDecimals: number,
): number | undefined {
  const decimals = Math.max(aDecimals, bDecimals);
  const [x, y] = [a * tens(decimals - aDecimals), b * tens(decimals - bDecimals)];
  return Math.abs(x) <= MOST && Math.abs(y) <= MOST ? x - y : undefined;
}
