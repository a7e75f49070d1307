/**
 * Lifts a product that binary arithmetic left a hair under a tie back onto it: about 18 units in the last
 * place, far below any stated decimal and above what a few operations lose.
 */
export const LIFT = 1 + 4e-15;

/** Half away from zero, credits too, to the decimals of the factor (100 for cents). */
export function roundOne(value: number, factor: number): number {
  const y = value * factor * LIFT;
  return Math.trunc(y + (y < 0 ? -0.5 : 0.5)) / factor;
}
