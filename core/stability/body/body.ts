import { valueAt } from '../../base';
import { clipToRectangle, type Outline } from '../geometry/polygon';
import { addBelow, clearWetted, dry, type Wetted } from '../geometry/wetted';
import { slicesOf, type HullForm, type Slice } from '../hull/hull-form';

/** The part of the ship a compartment takes: x from aft, y to starboard, z above the keel, metres. */
export interface Space {
  readonly id: string;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
  readonly permeability: number;
}

/** A set of slices that one body of water can fill: the hull from outside, or a compartment from inside. */
export interface Solid {
  readonly slices: readonly Slice[];
  readonly share: number;
  /** All the water it can hold, m3. */
  readonly capacity: number;
  /** The box it lies in, metres. */
  readonly bounds: Bounds;
}

interface Bounds {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
}

/** How a ship lies: heel as sine and cosine, and the slope of the water along her (rise aft per metre). */
export interface Attitude {
  readonly sin: number;
  readonly cos: number;
  /** Metres of extra water per metre aft of the aft perpendicular: positive by the stern. */
  readonly slope: number;
}

export const UPRIGHT: Attitude = { sin: 0, cos: 1, slope: 0 };

export function attitude(heel: number, slope = 0): Attitude {
  return { sin: Math.sin(heel), cos: Math.cos(heel), slope };
}

/** Sums up to the level: the water surface is w + slope x = level in axes turned with the heel. */
export function wet(solid: Solid, at: Attitude, level: number, sum: Wetted): Wetted {
  clearWetted(sum);
  for (const slice of solid.slices)
    addBelow(sum, slice.outline, at, level - at.slope * slice.x, slice.x, slice.length, solid.share);
  return sum;
}

function boundsOf(slices: readonly Slice[]): Bounds {
  const ys = slices.flatMap(({ outline }) => [...outline].filter((_, i) => i % 2 === 0));
  const zs = slices.flatMap(({ outline }) => [...outline].filter((_, i) => i % 2 === 1));
  const xs = slices.map(({ x }) => x);
  return {
    x0: Math.min(...xs),
    x1: Math.max(...xs),
    y0: Math.min(...ys),
    y1: Math.max(...ys),
    z0: Math.min(...zs),
    z1: Math.max(...zs),
  };
}

function solidOf(slices: readonly Slice[], share: number): Solid {
  const solid = { slices, share, capacity: 0, bounds: boundsOf(slices) };
  return { ...solid, capacity: wet(solid, UPRIGHT, reach(solid, UPRIGHT).high, dry()).volume };
}

/** Levels between which the surface of any part filling lies: a little wider than {@link reach}, and quick. */
export function reachWithin({ bounds }: Solid, at: Attitude): { low: number; high: number } {
  const { x0, x1, y0, y1, z0, z1 } = bounds;
  const y = [y0 * at.sin, y1 * at.sin];
  const z = [z0 * at.cos, z1 * at.cos];
  const x = [x0 * at.slope, x1 * at.slope];
  return {
    low: Math.min(...z) - Math.max(...y) + Math.min(...x),
    high: Math.max(...z) - Math.min(...y) + Math.max(...x),
  };
}

/** The hull as one solid, in slices of about a fortieth of the length. */
export function hullSolid(hull: HullForm, slices = 40): Solid {
  return solidOf(slicesOf(hull, 0, hull.length, hull.length / slices), 1);
}

/** A compartment: its box inside the hull. */
export function spaceSolid(hull: HullForm, space: Space, step: number): Solid {
  const slices = slicesOf(hull, space.x0, space.x1, step).flatMap(slice => {
    const outline: Outline = clipToRectangle(slice.outline, space.y0, space.y1, space.z0, space.z1);
    return outline.length >= 6 ? [{ ...slice, outline }] : [];
  });
  return solidOf(slices, space.permeability);
}

/** Lowest and highest w + slope x of a solid in this attitude. */
export function reach(solid: Solid, at: Attitude): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (const { outline, x } of solid.slices)
    for (let i = 0; i < outline.length; i += 2) {
      const w = valueAt(outline, i + 1) * at.cos - valueAt(outline, i) * at.sin + at.slope * x;
      if (w < low) low = w;
      if (w > high) high = w;
    }
  return { low, high };
}
