import { at } from '../../base';
import { outlineOf } from '../geometry/polygon';
import type { HullForm, Station } from './hull-form';

/** What shapes a hull when there are no lines: metres, coefficients at the draught given. */
export interface FormParticulars {
  readonly length: number;
  readonly breadth: number;
  readonly depth: number;
  readonly draught: number;
  readonly blockCoefficient: number;
  readonly waterplaneCoefficient: number;
}

/** Number of equal slices a hull without lines is cut into. */
export const FORM_SLICES = 40;
const HEIGHTS = [0, 0.01, 0.04, 0.1, 0.2, 0.35, 0.55, 0.8, 1];

/** The value of a rising or falling function that meets a target, by bisection. */
function solve(low: number, high: number, value: (x: number) => number, target: number): number {
  const rises = value(high) > value(low);
  let a = low;
  let b = high;
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (value(middle) < target === rises) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

function halfBreadths(exponent: number): number[] {
  return Array.from(
    { length: FORM_SLICES },
    (_, i) => 1 - Math.abs((2 * (i + 0.5)) / FORM_SLICES - 1) ** exponent,
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Share of the rectangle half-breadth times draught that a section of this power fills. */
function fullness(power: number): number {
  let area = 0;
  for (const [i, high] of HEIGHTS.slice(1).entries()) {
    const low = at(HEIGHTS, i);
    area += ((high - low) * (low ** power + high ** power)) / 2;
  }
  return area;
}

function section(half: number, power: number, hull: FormParticulars): Station['outline'] {
  const side = HEIGHTS.map((t): [number, number] => [half * t ** power, t * hull.draught]);
  const up: [number, number][] = [...side, [half, hull.depth]];
  return outlineOf([...up, ...up.map(([y, z]): [number, number] => [-y, z]).reverse()]);
}

/**
 * A hull with the given block and waterplane coefficients: half-breadths fall towards the ends with a power of
 * the distance from midships, sections widen with a power of the height up to the draught (which puts the centre
 * of buoyancy where Posdunine's rule does) and are wall-sided above it. A box when both coefficients are 1.
 */
export function hullFromParticulars(hull: FormParticulars): HullForm {
  const { blockCoefficient: cb, waterplaneCoefficient: cwp } = hull;
  const exponent = cwp >= 1 ? Infinity : solve(0.2, 400, p => mean(halfBreadths(p)), cwp);
  const power = cb >= cwp ? 0 : solve(0, 6, fullness, cb / cwp);
  const step = hull.length / FORM_SLICES;
  const stations = halfBreadths(exponent).map((share, i) => ({
    x: (i + 0.5) * step,
    outline: section((share * hull.breadth) / 2, power, hull),
  }));
  return { length: hull.length, depth: hull.depth, stations };
}
