import { DUST, MOST, NEAR, tens, type Cells } from './cells';

/** Beyond this the parts of one are lost in a double. */
const MOST_NEAR = 2 ** 51;

/**
 * Settles a present cell to stated decimals, half away from zero, into `cells.whole` and `cells.places`.
 * @returns false where the double cannot tell: too near a tie, or too great.
 */
export function settled(cells: Cells, cell: number, digits: number): boolean {
  const state = cells.stateOf(cell);
  if (state === NEAR) return settledNear(cells, cells.mantissaOf(cell), cells.errorOf(cell), digits);
  return settledWhole(cells, cells.mantissaOf(cell), state, digits);
}

/**
 * Settles a whole number over a power of ten. The quotient of a whole number of 53 bits by another is a whole number only
 * where it is one exactly: the nearest that is none lies further off than half a unit in its last place.
 */
export function settledWhole(cells: Cells, whole: number, decimals: number, digits: number): true {
  if (decimals <= digits) return put(cells, whole, decimals);
  const by = tens(decimals - digits);
  const size = Math.abs(whole);
  const quotient = Math.trunc(size / by);
  const rest = size - quotient * by;
  const settledTo = rest * 2 >= by ? quotient + 1 : quotient;
  return put(cells, whole < 0 ? -settledTo : settledTo, digits);
}

/** Settles a double that may be off by an error. */
export function settledNear(cells: Cells, value: number, error: number, digits: number): boolean {
  const y = Math.abs(value) * tens(digits);
  if (!(y < MOST_NEAR)) return false;
  const below = Math.floor(y);
  const part = y - below;
  if (Math.abs(part - 0.5) <= error * tens(digits) * (1 + DUST) + y * DUST) return false;
  const whole = part > 0.5 ? below + 1 : below;
  return put(cells, value < 0 ? -whole : whole, digits);
}

/** Settles the product of two whole numbers over powers of ten. */
export function settledProduct(
  cells: Cells,
  a: { readonly whole: number; readonly decimals: number },
  b: { readonly whole: number; readonly decimals: number },
  digits: number,
): boolean {
  const product = a.whole * b.whole;
  const decimals = a.decimals + b.decimals;
  if (Math.abs(product) <= MOST && decimals <= 22) return settledWhole(cells, product, decimals, digits);
  const near = a.whole * (b.whole / tens(Math.min(22, decimals)));
  return decimals <= 22 && settledNear(cells, near, Math.abs(near) * DUST * 2, digits);
}

/** Keeps what was settled without zeros behind, so that products stay short. */
function put(cells: Cells, whole: number, places: number): true {
  let kept = whole + 0;
  let decimals = places;
  while (decimals > 0) {
    const shorter = Math.floor(kept / 10);
    if (shorter * 10 !== kept) break;
    kept = shorter;
    decimals -= 1;
  }
  cells.whole = kept;
  cells.places = decimals;
  return true;
}

/** The next whole number up from a whole number of 53 bits over a power of ten, by a quotient that is as sure as there. */
export function wholeAbove(whole: number, places: number): number {
  return Math.ceil(whole / tens(places)) + 0;
}
