/**
 * Lifts a product that binary arithmetic left a hair under a tie back onto it: about 18 units in the last
 * place, far below any stated decimal and above what a few operations lose.
 */
export const LIFT = 1 + 4e-15;

/**
 * A half, and what a difference of greater amounts may fall short of it: in cents, the error of two amounts
 * of half a million dollars that nearly cancel. What is given has too few decimals to come so near a tie.
 */
const HALF = 0.5 + 2e-8;

/** To the nearest whole number, half away from zero. */
export function nearestWhole(y: number): number {
  return Math.trunc(y + (y < 0 ? -HALF : HALF));
}

/** Half away from zero, credits too, to the decimals of the factor (100 for cents). */
export function roundOne(value: number, factor: number): number {
  return nearestWhole(value * factor * LIFT) / factor;
}
