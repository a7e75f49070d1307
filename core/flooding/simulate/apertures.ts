import { at } from '../../base';
import { attitude, GRAVITY, SEA_WATER } from '../../stability';
import { airPressureShare, ATMOSPHERE } from '../hydraulics/air';
import { apertureFlow, drivingHead, type Aperture, type Side } from '../hydraulics/opening-flow';
import { SEA, type FloodableShip, type Link, type Position } from './ship';
import type { Water } from './waters';

const WEIGHT = SEA_WATER * GRAVITY;

/** A link in the attitude of the moment. */
export interface TurnedLink {
  readonly link: Link;
  readonly hole: Aperture;
}

/** All links turned with the ship. */
export function turnLinks(ship: FloodableShip, position: Position): TurnedLink[] {
  const { sin, cos, slope } = attitude(position.heel, position.slope);
  return ship.links.map(link => {
    const w = link.z * cos - link.y * sin + slope * link.x;
    const half = Math.abs((link.height * cos) / 2);
    return { link, hole: { low: w - half, high: w + half, area: link.area, discharge: link.discharge } };
  });
}

/** One side of a link: a room's water or the sea. */
export function sideOf(room: number, waters: readonly Water[], sea: number): Side {
  return room === SEA ? { level: sea, air: 0 } : at(waters, room);
}

function openTop(hole: Aperture, level: number): number {
  const height = hole.high - hole.low;
  if (height < 1e-6) return level < hole.low ? hole.area : 0;
  return (hole.area * Math.max(0, hole.high - Math.max(level, hole.low))) / height;
}

/** Area through which a room can breathe to the sea side of a link, m2. */
function breathingArea({ link, hole }: TurnedLink, water: Water, sea: number): number {
  const isDrowned = sea > hole.high;
  if (isDrowned && (link.isVent || link.height === 0)) return 0;
  return openTop(hole, isDrowned ? water.level : Math.max(sea, water.level));
}

/**
 * Air: which rooms breathe (to the open, or through another that does), how much their escapes hold the water
 * back, and the pressure in those that are shut.
 */
export function breathe(
  ship: FloodableShip,
  links: readonly TurnedLink[],
  waters: readonly Water[],
  sea: number,
): void {
  const airways = waters.map(() => 0);
  const inlets = waters.map(() => 0);
  for (const turned of links) {
    const { a, b } = turned.link;
    const water = waters[b];
    if (a !== SEA || !water) continue;
    airways[b] = at(airways, b) + breathingArea(turned, water, sea);
    if (!turned.link.isVent && sea > turned.hole.low) inlets[b] = at(inlets, b) + turned.hole.area;
  }
  shareAir(links, waters, airways);
  waters.forEach((water, i) =>
    setAir(water, at(ship.rooms, i).solid.capacity, at(airways, i), at(inlets, i)),
  );
}

/** Rooms without an escape of their own breathe through the dry part of a door to a room that has one. */
function shareAir(links: readonly TurnedLink[], waters: readonly Water[], airways: number[]): void {
  for (let pass = 0; pass < waters.length; pass++) {
    let changed = false;
    for (const { link, hole } of links) {
      const [one, other] = [waters[link.a], waters[link.b]];
      if (!one || !other) continue;
      const way = openTop(hole, Math.max(one.level, other.level));
      for (const [to, from] of [
        [link.a, link.b],
        [link.b, link.a],
      ] as const)
        if (at(airways, to) === 0 && at(airways, from) > 0 && way > 0) {
          airways[to] = Math.min(way, at(airways, from));
          changed = true;
        }
    }
    if (!changed) return;
  }
}

function setAir(water: Water, capacity: number, airway: number, inlet: number): void {
  const space = Math.max(capacity - water.volume, 1e-6 * capacity);
  water.isBreathing = airway > 0;
  if (water.isBreathing || water.volume >= capacity * (1 - 1e-9)) {
    water.shutAir = ATMOSPHERE * space;
    water.air = 0;
    water.airStiffness = 0;
    water.passes = inlet > 0 && airway > 0 ? Math.sqrt(1 - airPressureShare(airway / inlet)) : 1;
    return;
  }
  if (water.shutAir === 0) water.shutAir = ATMOSPHERE * space;
  const pressure = water.shutAir / space;
  water.air = (pressure - ATMOSPHERE) / WEIGHT;
  water.airStiffness = pressure / space / WEIGHT;
  water.passes = 1;
}

/** Flow through a link from a to b, m3/s, and how it changes with the head on either side, m2/s. */
export interface LinkFlow {
  readonly flow: number;
  readonly byA: number;
  readonly byB: number;
}

/** Weight of the new heads in a step: between the middle rule (0.5) and the implicit one (1), for calm and accuracy. */
export const AHEAD = 0.6;
const NUDGE = 1e-4;
/** Difference of heads, m, below which two sides count as nearly level. */
const NEARLY_LEVEL = 0.005;

function raised(side: Side): Side {
  return { level: side.level + NUDGE, air: side.air };
}

/** Weight that makes a chord count fully at the end of the step; see the exchange of a step. */
const CHORD = 1 / AHEAD;

/**
 * The flow of a turned link, slowed by the air that has to leave the room it enters. Its slope is the tangent in
 * open rooms; where a side is full or the heads are nearly level it is the chord to the origin, which settles
 * without swinging.
 */
export function linkFlow({ link, hole }: TurnedLink, waters: readonly Water[], sea: number): LinkFlow {
  const a = sideOf(link.a, waters, sea);
  const b = sideOf(link.b, waters, sea);
  const raw = apertureFlow(a, b, hole);
  const passes = waters[raw > 0 ? link.b : link.a]?.passes ?? 1;
  const flow = raw * passes;
  const { head, isHeldBack } = drivingHead(a, b, hole);
  const isStiff = waters[link.a]?.isFull === true || waters[link.b]?.isFull === true;
  if (flow !== 0 && head > 0 && (isStiff || head < NEARLY_LEVEL)) {
    const chord = (CHORD * Math.abs(flow)) / head;
    const isFromA = flow > 0;
    return { flow, byA: isFromA || isHeldBack ? chord : 0, byB: !isFromA || isHeldBack ? -chord : 0 };
  }
  return {
    flow,
    byA: (passes * (apertureFlow(raised(a), b, hole) - raw)) / NUDGE,
    byB: (passes * (apertureFlow(a, raised(b), hole) - raw)) / NUDGE,
  };
}
