import { at, valueAt } from '../../base';
import type { Outline } from '../geometry/polygon';

/** A section of the hull at x metres forward of the aft perpendicular. */
export interface Station {
  readonly x: number;
  readonly outline: Outline;
}

/** The closed hull up to its uppermost watertight deck, as sections from aft to forward. */
export interface HullForm {
  readonly length: number;
  readonly depth: number;
  readonly stations: readonly Station[];
}

/** A short length of hull with one section. */
export interface Slice {
  readonly x: number;
  readonly length: number;
  readonly outline: Outline;
}

/** The section at x: between two stations with equally many points, the straight line between them. */
export function sectionAt(hull: HullForm, x: number): Outline {
  const { stations } = hull;
  const after = stations.findIndex(station => station.x >= x);
  const fore = at(stations, after === -1 ? stations.length - 1 : after);
  const aft = after === -1 ? fore : at(stations, Math.max(0, after - 1));
  if (fore.x === aft.x || fore.outline.length !== aft.outline.length) return fore.outline;
  const s = (x - aft.x) / (fore.x - aft.x);
  return aft.outline.map((value, i) => value + s * (valueAt(fore.outline, i) - value));
}

/** The stretch from x0 to x1 as slices no longer than `step`, each with the section of its middle. */
export function slicesOf(hull: HullForm, x0: number, x1: number, step: number): Slice[] {
  const from = Math.max(0, x0);
  const to = Math.min(hull.length, x1);
  if (to <= from) return [];
  const count = Math.max(1, Math.ceil((to - from) / step - 1e-9));
  const length = (to - from) / count;
  return Array.from({ length: count }, (_, i) => {
    const x = from + (i + 0.5) * length;
    return { x, length, outline: sectionAt(hull, x) };
  });
}
