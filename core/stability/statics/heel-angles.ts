import { DEGREE } from '../constants';

/** List, degrees, of a mass (t) shifted sideways (m): tan(list) = w d / (W GM), for GM above zero. */
export function listFromShift(mass: number, distance: number, displacement: number, gm: number): number {
  return Math.atan((mass * distance) / (displacement * gm)) / DEGREE;
}

/** List, degrees, of a wall-sided ship with no GM at all: tan(list) = cube root of (2 w d / (W BM)). */
export function listWithoutGm(mass: number, distance: number, displacement: number, bm: number): number {
  return Math.atan(Math.cbrt((2 * mass * distance) / (displacement * bm))) / DEGREE;
}

/** The angle at which an unstable wall-sided ship comes to rest, and her GM there. */
export interface Loll {
  readonly degrees: number;
  readonly gmThere: number;
}

/** Angle of loll: tan(angle) = sqrt(-2 GM / BM), GM there -2 GM / cos(angle); none when GM is not negative. */
export function angleOfLoll(gm: number, bm: number): Loll | undefined {
  if (gm >= 0) return undefined;
  const angle = Math.atan(Math.sqrt((-2 * gm) / bm));
  return { degrees: angle / DEGREE, gmThere: (-2 * gm) / Math.cos(angle) };
}

/** Righting lever of a wall-sided ship, m: sin(angle) (GM + BM tan^2(angle) / 2), until the deck edge is under. */
export function wallSidedGz(gm: number, bm: number, degrees: number): number {
  const angle = degrees * DEGREE;
  return Math.sin(angle) * (gm + 0.5 * bm * Math.tan(angle) ** 2);
}
