import { DEGREE } from '../constants';

/** GM, m, from an inclining: a mass (t) moved sideways (m) and the angle it gave. */
export function gmFromInclining(
  mass: number,
  distance: number,
  displacement: number,
  degrees: number,
): number {
  return (mass * distance) / (displacement * Math.tan(degrees * DEGREE));
}

/** Coefficient of the rolling period. @source IMO Intact Stability Code 2008 part A 2.3.4 (from memory). */
export function rollCoefficient(length: number, breadth: number, draught: number): number {
  return 0.373 + (0.023 * breadth) / draught - (0.043 * length) / 100;
}

/** GM, m, from a timed full roll period, s: T = 2 C B / sqrt(GM). */
export function gmFromRollPeriod(
  period: number,
  hull: { length: number; breadth: number; draught: number },
): number {
  const c = rollCoefficient(hull.length, hull.breadth, hull.draught);
  return ((2 * c * hull.breadth) / period) ** 2;
}

/** Full roll period, s, of a ship with this GM (m, above zero). */
export function rollPeriod(gm: number, hull: { length: number; breadth: number; draught: number }): number {
  const c = rollCoefficient(hull.length, hull.breadth, hull.draught);
  return (2 * c * hull.breadth) / Math.sqrt(gm);
}
