import { outlineOf } from '../geometry/polygon';
import type { HullForm } from './hull-form';

/** A section of an offset table: the outline of the whole section as points (y, z), metres. */
export interface OffsetStation {
  readonly x: number;
  readonly outline: readonly (readonly [number, number])[];
}

/** A hull from an offset table; stations in any order, one station makes a prism. */
export function hullFromStations(
  length: number,
  depth: number,
  stations: readonly OffsetStation[],
): HullForm {
  const sorted = [...stations].sort((a, b) => a.x - b.x);
  return {
    length,
    depth,
    stations: sorted.map(station => ({ x: station.x, outline: outlineOf(station.outline) })),
  };
}
