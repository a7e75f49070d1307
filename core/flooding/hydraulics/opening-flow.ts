import { GRAVITY } from '../../stability';

/** Water on one side of an opening: its level and the head of the air above it, metres. */
export interface Side {
  readonly level: number;
  readonly air: number;
}

/** An opening in the turned axes: lower and upper edge (m) and discharge coefficient times breadth or area. */
export interface Aperture {
  readonly low: number;
  readonly high: number;
  readonly area: number;
  readonly discharge: number;
}

/** Below this head (m) the root is replaced by a smooth curve, so that levels settle without chatter. */
const SMOOTH = 1e-4;

function root(head: number): number {
  if (head >= SMOOTH) return Math.sqrt(head);
  const s = head / SMOOTH;
  return Math.sqrt(SMOOTH) * s * (1.5 - 0.5 * s);
}

function drowned(from: number, to: number, low: number, high: number): number {
  return Math.max(0, high - low) * root(Math.max(0, from - to));
}

function jet(total: number, low: number, high: number): number {
  if (high <= low) return 0;
  return (2 / 3) * (Math.max(0, total - low) ** 1.5 - Math.max(0, total - high) ** 1.5);
}

function oneWay(up: Side, down: Side, hole: Aperture): number {
  const from = up.level + up.air;
  if (up.level <= hole.low) return 0;
  const strength = hole.discharge * hole.area * Math.sqrt(2 * GRAVITY);
  const height = hole.high - hole.low;
  if (height < 1e-6) {
    const to = Math.max(down.level, hole.low) + down.air;
    return strength * root(Math.max(0, from - to));
  }
  const wetTop = Math.min(hole.high, up.level);
  const drownedTop = Math.min(wetTop, Math.max(hole.low, down.level));
  const below = drowned(from, down.level + down.air, hole.low, drownedTop);
  const above = jet(from - down.air, drownedTop, wetTop);
  return (strength * (below + above)) / height;
}

/**
 * Flow, m3/s, from side a to side b (negative the other way) through an opening that may be dry, partly or wholly
 * under on either side: drowned part by the difference of heads, free part as a jet over its depth.
 */
export function apertureFlow(a: Side, b: Side, hole: Aperture): number {
  if (a.level + a.air >= b.level + b.air) return oneWay(a, b, hole);
  return -oneWay(b, a, hole);
}

/**
 * Head, m, that drives the flow from the higher side to the lower, and whether the lower side holds it back: a jet
 * into air is driven by the height above the opening alone.
 */
export function drivingHead(a: Side, b: Side, hole: Aperture): { head: number; isHeldBack: boolean } {
  const [up, down] = a.level + a.air >= b.level + b.air ? [a, b] : [b, a];
  const isHeldBack = down.level > hole.low;
  return { head: up.level + up.air - Math.max(down.level, hole.low) - down.air, isHeldBack };
}
