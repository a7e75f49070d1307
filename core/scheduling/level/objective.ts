/** What levelling makes small, for one resource: a figure from its units day by day over the days it can be used. */
export interface LevellingObjective {
  readonly title: string;
  readonly value: (units: readonly number[]) => number;
}

/** Weights the highest use so that it always outweighs the sum of squares beside it. */
const PEAK_WEIGHT = 1e7;

export type LevellingKind = 'squares' | 'peak' | 'hire-and-release';

/**
 * - `squares`: the sum of squares of the daily use, the classical measure of an even profile.
 * - `peak`: the highest use, and among equal peaks the sum of squares.
 * - `hire-and-release`: units hired, each time the use rises, and so released again later; then the sum of squares.
 * @source A. Burgess, J. Killebrew, Variation in activity level on a cyclical arrow diagram, J. Ind. Eng. 13 (1962)
 * 76-83 (from memory), for the sum of squares.
 */
export const LEVELLING_OBJECTIVES: Readonly<Record<LevellingKind, LevellingObjective>> = {
  squares: { title: 'Evenness (sum of squares)', value: sumOfSquares },
  peak: {
    title: 'Highest use',
    value: units => units.reduce((a, b) => Math.max(a, b), 0) * PEAK_WEIGHT + sumOfSquares(units),
  },
  'hire-and-release': {
    title: 'Hiring and releasing',
    value: units => unitsHired(units) * PEAK_WEIGHT + sumOfSquares(units),
  },
};

export function sumOfSquares(units: readonly number[]): number {
  return units.reduce((sum, n) => sum + n * n, 0);
}

/** Units hired over time: every rise of the use, the first from nothing included. */
export function unitsHired(units: readonly number[]): number {
  return units.reduce((sum, n, day) => sum + Math.max(0, n - (units[day - 1] ?? 0)), 0);
}
