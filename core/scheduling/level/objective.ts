/** What levelling makes small, for one resource. */
export interface LevellingObjective {
  readonly title: string;
  /** The figure that counts; among schedules with equal figures the even one is better. */
  readonly of: (use: Use) => number;
}

/** The use of one resource over time, in figures. */
export interface Use {
  readonly squares: number;
  readonly hired: number;
  readonly peak: number;
}

export type LevellingKind = 'squares' | 'peak' | 'hire-and-release';

/**
 * - `squares`: the sum of squares of the daily use, the classical measure of an even profile.
 * - `peak`: the highest use, and among equal peaks the sum of squares.
 * - `hire-and-release`: units hired, each time the use rises, and so released again later; then the sum of squares.
 * @source A. Burgess, J. Killebrew, Variation in activity level on a cyclical arrow diagram, J. Ind. Eng. 13 (1962)
 * 76-83 (from memory), for the sum of squares.
 */
export const LEVELLING_OBJECTIVES: Readonly<Record<LevellingKind, LevellingObjective>> = {
  squares: { title: 'Evenness (sum of squares)', of: use => use.squares },
  peak: { title: 'Highest use', of: use => use.peak },
  'hire-and-release': { title: 'Hiring and releasing', of: use => use.hired },
};

export function sumOfSquares(units: readonly number[]): number {
  return units.reduce((sum, n) => sum + n * n, 0);
}

/** Units hired over time: every rise of the use, the first from nothing included. */
export function unitsHired(units: readonly number[]): number {
  return units.reduce((sum, n, day) => sum + Math.max(0, n - (units[day - 1] ?? 0)), 0);
}
