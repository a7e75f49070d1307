import { at, valueAt } from '../../base';

/**
 * A closed outline of a section: y0, z0, y1, z1, ... in metres, counter-clockwise seen from astern with y to
 * starboard and z up. The last point joins the first.
 */
export type Outline = Float64Array;

/** Signed area of an outline, m2: positive when counter-clockwise. */
export function signedArea(outline: Outline): number {
  let twice = 0;
  for (let i = 0; i < outline.length; i += 2) {
    const j = (i + 2) % outline.length;
    twice += valueAt(outline, i) * valueAt(outline, j + 1) - valueAt(outline, j) * valueAt(outline, i + 1);
  }
  return twice / 2;
}

/** An outline from points, turned counter-clockwise when it is not. */
export function outlineOf(points: readonly (readonly [number, number])[]): Outline {
  const flat = Float64Array.from(points.flat());
  if (signedArea(flat) >= 0) return flat;
  return Float64Array.from([...points].reverse().flat());
}

/** A rectangle as an outline. */
export function rectangle(y0: number, y1: number, z0: number, z1: number): Outline {
  return Float64Array.of(y0, z0, y1, z0, y1, z1, y0, z1);
}

type Cut = (y: number, z: number) => number;

/** What is left of an outline where `inside` is not negative. @source Sutherland and Hodgman, CACM 17(1), 1974. */
function clipBy(points: readonly (readonly [number, number])[], inside: Cut): [number, number][] {
  const kept: [number, number][] = [];
  points.forEach(([y, z], i) => {
    const [py, pz] = at(points, (i + points.length - 1) % points.length);
    const here = inside(y, z);
    const before = inside(py, pz);
    if (here >= 0 !== before >= 0) {
      const s = before / (before - here);
      kept.push([py + s * (y - py), pz + s * (z - pz)]);
    }
    if (here >= 0) kept.push([y, z]);
  });
  return kept;
}

/** The part of a section outline inside a rectangle; empty when nothing is left. */
export function clipToRectangle(outline: Outline, y0: number, y1: number, z0: number, z1: number): Outline {
  let points: [number, number][] = [];
  for (let i = 0; i < outline.length; i += 2) points.push([valueAt(outline, i), valueAt(outline, i + 1)]);
  const cuts: Cut[] = [y => y - y0, y => y1 - y, (_, z) => z - z0, (_, z) => z1 - z];
  for (const cut of cuts) points = clipBy(points, cut);
  return outlineOf(points);
}
