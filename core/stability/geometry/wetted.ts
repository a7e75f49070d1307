import { valueAt } from '../../base';
import type { Outline } from './polygon';

/**
 * Running sums over the parts of sections below a water surface, in axes turned with the heel: u level to
 * starboard, w up, both through the keel point. Volumes in m3, moments in m4, inertia in m5.
 */
export interface Wetted {
  volume: number;
  /** First moments of the volume. */
  mx: number;
  mu: number;
  mw: number;
  /** The water surface: area, first moments, second moments. */
  area: number;
  ax: number;
  au: number;
  axx: number;
  axu: number;
  auu: number;
}

export function dry(): Wetted {
  return { volume: 0, mx: 0, mu: 0, mw: 0, area: 0, ax: 0, au: 0, axx: 0, axu: 0, auu: 0 };
}

export function clearWetted(sum: Wetted): void {
  sum.volume = sum.mx = sum.mu = sum.mw = 0;
  sum.area = sum.ax = sum.au = sum.axx = sum.axu = sum.auu = 0;
}

/**
 * Adds the part of a section below the level `w = level` to the sums, times `length` metres of ship and the
 * `share` of it that water can take. Green's theorem with a form that vanishes on the water surface, so the outline is walked once
 * and no clipped outline is built; it holds for any simple outline, convex or not.
 */
export function addBelow(
  sum: Wetted,
  outline: Outline,
  at: { readonly sin: number; readonly cos: number },
  level: number,
  x: number,
  length: number,
  share = 1,
): void {
  const n = outline.length;
  if (n < 6) return;
  const { sin, cos } = at;
  const lastY = valueAt(outline, n - 2);
  const lastZ = valueAt(outline, n - 1);
  let u1 = lastY * cos + lastZ * sin;
  let h1 = lastZ * cos - lastY * sin - level;
  let area = 0;
  let mu = 0;
  let mh = 0;
  let width = 0;
  let first = 0;
  let second = 0;
  for (let i = 0; i < n; i += 2) {
    const y = valueAt(outline, i);
    const z = valueAt(outline, i + 1);
    const u2 = y * cos + z * sin;
    const h2 = z * cos - y * sin - level;
    if (h1 < 0 || h2 < 0) {
      let a = u1;
      let b = u2;
      let ha = h1;
      let hb = h2;
      if (h1 >= 0 || h2 >= 0) {
        const crossing = u1 + ((u2 - u1) * h1) / (h1 - h2);
        const side = h1 < 0 ? 1 : -1;
        if (h1 < 0) {
          b = crossing;
          hb = 0;
        } else {
          a = crossing;
          ha = 0;
        }
        width += side * crossing;
        first += (side * crossing * crossing) / 2;
        second += (side * crossing * crossing * crossing) / 3;
      }
      const du = b - a;
      area -= (du * (ha + hb)) / 2;
      mh -= (du * (ha * ha + ha * hb + hb * hb)) / 6;
      mu -= (du * ((2 * a + b) * ha + (a + 2 * b) * hb)) / 6;
    }
    u1 = u2;
    h1 = h2;
  }
  addSection(sum, { area, mu, mw: mh + area * level, width, first, second }, x, length, share);
}

interface SectionSums {
  readonly area: number;
  readonly mu: number;
  readonly mw: number;
  readonly width: number;
  readonly first: number;
  readonly second: number;
}

function addSection(sum: Wetted, s: SectionSums, x: number, length: number, share: number): void {
  const weight = length * share;
  sum.volume += s.area * weight;
  sum.mx += s.area * weight * x;
  sum.mu += s.mu * weight;
  sum.mw += s.mw * weight;
  sum.area += s.width * weight;
  sum.ax += s.width * weight * x;
  sum.au += s.first * weight;
  sum.axx += s.width * weight * (x * x + (length * length) / 12);
  sum.axu += s.first * weight * x;
  sum.auu += s.second * weight;
}
