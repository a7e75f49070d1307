import { attitude, DEGREE, fillLevel, wet, type Attitude, type Wetted } from '../../stability';
import type { FloodableShip, Position } from './ship';
import { settleWaters, type Water } from './waters';

/** What turns her, in m4 (moments over density), and how stiff she is against it. */
interface Balance {
  readonly rolling: number;
  readonly rollStiffness: number;
  readonly trimming: number;
  readonly trimStiffness: number;
  /** Weight not carried by the water, m3: what the bottom carries. */
  readonly unsupported: number;
}

/** Limits on one settling: most the heel and the slope may change. */
export interface TurnLimits {
  readonly heel: number;
  readonly slope: number;
  readonly disturbance: number;
}

interface Terms {
  roll: number;
  rollStiff: number;
  trim: number;
  trimStiff: number;
}

function addTerms(
  to: Terms,
  sums: Wetted,
  sign: 1 | -1,
  slope: number,
  pivot: number,
  isFree: boolean,
): void {
  to.roll += sign * sums.mu;
  to.trim += sign * (sums.mx - slope * sums.mw - pivot * sums.volume);
  const hasSurface = isFree && sums.area > 0;
  const own = hasSurface ? sums.auu - (sums.au * sums.au) / sums.area : sums.auu;
  const along = hasSurface
    ? sums.axx - (sums.ax * sums.ax) / sums.area
    : sums.axx - 2 * pivot * sums.ax + pivot * pivot * sums.area;
  to.rollStiff += sign * (own + sums.mw);
  to.trimStiff += sign * (along + sums.mw);
}

function keelPivot(ship: FloodableShip, at: Position): number {
  return at.ground === 'bow' ? ship.length : 0;
}

function balance(ship: FloodableShip, waters: readonly Water[], at: Position, depth: number): Balance {
  const turned: Attitude = attitude(at.heel, at.slope);
  const outside = at.sums;
  const total = waters.reduce((sum, water) => sum + water.volume, ship.lightVolume);
  const isGrounded = at.ground !== 'none';
  const pivot = isGrounded ? keelPivot(ship, at) : 0;
  if (isGrounded) {
    at.level = depth + at.slope * pivot;
    wet(ship.hull, turned, at.level, outside);
  } else at.level = fillLevel(ship.hull, turned, total, outside, at.level);
  settleWaters(ship, waters, turned);
  const terms: Terms = { roll: 0, rollStiff: 0, trim: 0, trimStiff: 0 };
  addTerms(terms, outside, 1, at.slope, pivot, !isGrounded);
  for (const water of waters) if (water.volume > 0) addTerms(terms, water.sums, -1, at.slope, pivot, true);
  const { x, y, z } = ship.centre;
  const { sin, cos } = turned;
  const high = z * cos - y * sin;
  terms.roll -= ship.lightVolume * (y * cos + z * sin);
  terms.trim -= ship.lightVolume * (x - at.slope * high - pivot);
  return {
    rolling: terms.roll,
    rollStiffness: terms.rollStiff - ship.lightVolume * high,
    trimming: terms.trim,
    trimStiffness: terms.trimStiff - ship.lightVolume * high,
    unsupported: total - outside.volume,
  };
}

function clamp(value: number, size: number): number {
  return Math.max(-size, Math.min(size, value));
}

/** Heels tried in one settling: the last that was carried to starboard, the last that was carried to port. */
interface Bracket {
  toStarboard: number;
  toPort: number;
}

/** Most she is turned between two looks at what turns her. */
const STRIDE = DEGREE;

function turnedHeel(ship: FloodableShip, heel: number, now: Balance, tried: Bracket, nudge: number): number {
  const tolerance = 1e-7 * ship.lightVolume * ship.breadth;
  const least = 1e-3 * ship.lightVolume;
  if (Math.abs(now.rolling) <= tolerance) {
    const isUnstable = now.rollStiffness < -least && Math.abs(heel) < Math.abs(nudge);
    return isUnstable ? nudge : heel;
  }
  if (now.rolling < 0) tried.toStarboard = heel;
  else tried.toPort = heel;
  const isStiff = now.rollStiffness > least;
  const push = isStiff ? -now.rolling / now.rollStiffness : -Math.sign(now.rolling) * STRIDE;
  const next = heel + clamp(push, STRIDE);
  const isBetween = next > tried.toStarboard && next < tried.toPort;
  return isBetween ? next : (tried.toStarboard + tried.toPort) / 2;
}

/**
 * Change of slope towards rest. Even keel with nothing to trim her stays even keel, also where a free surface
 * along her whole length would let her go by either end: which end is chance, and the findings say so.
 */
function turnedSlope(ship: FloodableShip, now: Balance): number {
  if (Math.abs(now.trimming) <= 1e-7 * ship.lightVolume * ship.length) return 0;
  return now.trimStiffness > 0 ? now.trimming / now.trimStiffness : Math.sign(now.trimming);
}

/** Which end is on the bottom now: one end that has gone deeper than the water is deep, or an end let go. */
function groundNow(
  ship: FloodableShip,
  at: Position,
  depth: number,
  unsupported: number,
): Position['ground'] {
  const stern = at.level;
  const bow = at.level - at.slope * ship.length;
  const touch = depth + 1e-6;
  if (at.ground === 'none') {
    if (stern > touch && stern >= bow) return 'stern';
    return bow > touch ? 'bow' : 'none';
  }
  if (unsupported < 0) return 'none';
  const free = at.ground === 'stern' ? bow : stern;
  return free > touch ? 'both' : at.ground;
}

/**
 * Lets her settle with the water she has aboard: level, heel and slope, by Newton steps that never turn her
 * further than the limits, to the heel where she rests or on the way to it. One end may rest on the bottom.
 * @returns whether she was still turning at the limit.
 */
export function settle(
  ship: FloodableShip,
  waters: readonly Water[],
  at: Position,
  depth: number,
  limits: TurnLimits,
): boolean {
  const start = { heel: at.heel, slope: at.slope };
  const tried: Bracket = { toStarboard: -Infinity, toPort: Infinity };
  for (let pass = 0; pass < 60; pass++) {
    const now = balance(ship, waters, at, depth);
    const ground = groundNow(ship, at, depth, now.unsupported);
    if (ground === 'both') {
      at.ground = ground;
      return false;
    }
    if (ground !== at.ground) {
      at.ground = ground;
      continue;
    }
    const wanted = turnedHeel(ship, at.heel, now, tried, limits.disturbance);
    const heel = start.heel + clamp(wanted - start.heel, limits.heel);
    const push = turnedSlope(ship, now);
    const slope = start.slope + clamp(at.slope + push - start.slope, limits.slope);
    const moved = Math.max(Math.abs(heel - at.heel), Math.abs(slope - at.slope));
    if (moved < 1e-7) return Math.abs(wanted - start.heel) > limits.heel;
    at.heel = heel;
    at.slope = Math.abs(slope) < 1e-12 ? 0 : slope;
  }
  return true;
}

/** Metres the sea rises on a floating ship for each m3 that comes aboard, from the last settling. */
export function seaRise(at: Position): number {
  return at.ground === 'none' && at.sums.area > 0 ? 1 / at.sums.area : 0;
}

/** Heel in degrees. */
export function heelDegrees(at: Position): number {
  return at.heel / DEGREE;
}
