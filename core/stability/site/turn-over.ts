import { DEGREE } from '../constants';

/** Half the diagonal of the section from keel to highest point, m: deeper water than this lets her turn over. */
export function halfDiagonal(breadth: number, height: number): number {
  return Math.hypot(breadth, height) / 2;
}

/**
 * Whether the section could turn over in this depth. It does not replace preparation, and no credit is given for
 * coming upright on the way down.
 */
export function canTurnOver(depth: number, breadth: number, height: number): boolean {
  return depth > halfDiagonal(breadth, height);
}

/** Angle, degrees, of a ship with one end on the bottom and the other at the surface; none when she fits upright. */
export function endGroundingAngle(depth: number, length: number): number | undefined {
  return depth >= length ? undefined : Math.asin(depth / length) / DEGREE;
}

/** Clear water over the wreck, m, at chart datum; settlement adds to it. */
export function clearanceOver(depth: number, highestPoint: number, settlement = 0): number {
  return depth - highestPoint + settlement;
}
