import { at } from '../../base';
import { DEGREE } from '../constants';
import { rightingMoment, type Centre, type WetShip } from '../body/righting';

/** One point of a curve of righting levers: heel in degrees, lever in metres. */
export interface LeverPoint {
  readonly degrees: number;
  readonly gz: number;
}

/** What the curve of righting levers comes to beyond a heel. */
export interface LeverCurve {
  readonly points: readonly LeverPoint[];
  readonly greatest: LeverPoint;
  /** Heel at which the lever vanishes, degrees; the end of the curve where it does not. */
  readonly vanishes: number;
}

/** Heels that the curve is followed to, and its step, degrees. */
const FURTHEST = 80;
const STEP = 0.5;

/**
 * Curve of righting levers GZ of the real section, m, over the light displacement: from a heel onward until the lever
 * vanishes or 80 degrees. The trim is left out; the deck is closed and nothing above it counts.
 * @param side 1 to starboard, -1 to port.
 */
export function leverCurve(ship: WetShip, centre: Centre, from = 0, side: 1 | -1 = 1): LeverCurve {
  const points: LeverPoint[] = [];
  for (let degrees = from; degrees <= FURTHEST + 1e-9; degrees += STEP)
    points.push({
      degrees,
      gz: (side * rightingMoment(ship, centre, side * degrees * DEGREE)) / ship.lightVolume,
    });
  const end = points.findIndex((point, i) => i > 0 && point.gz < 0);
  const positive = end < 0 ? points : points.slice(0, end);
  const greatest = positive.reduce((top, point) => (point.gz > top.gz ? point : top), at(points, 0));
  const vanishes = end < 0 ? FURTHEST : crossing(at(points, end - 1), at(points, end));
  return { points, greatest, vanishes };
}

/** Heel between two points at which a straight line between their levers crosses zero. */
function crossing(a: LeverPoint, b: LeverPoint): number {
  return a.gz <= 0 ? a.degrees : a.degrees + ((b.degrees - a.degrees) * a.gz) / (a.gz - b.gz);
}

/** Lever at a heel, m, read between the points. */
export function leverAt({ points }: LeverCurve, degrees: number): number {
  const next = points.findIndex(point => point.degrees >= degrees - 1e-9);
  const [a, b] = [at(points, Math.max(0, next - 1)), at(points, next)];
  if (b.degrees === a.degrees) return b.gz;
  return a.gz + ((b.gz - a.gz) * (degrees - a.degrees)) / (b.degrees - a.degrees);
}

/** Area under the curve between two heels, metre degrees (trapezia at half a degree). */
export function leverArea(curve: LeverCurve, from: number, to: number): number {
  let area = 0;
  for (let start = from; start < to - 1e-9; start += STEP) {
    const end = Math.min(to, start + STEP);
    area += ((leverAt(curve, start) + leverAt(curve, end)) / 2) * (end - start);
  }
  return area;
}
