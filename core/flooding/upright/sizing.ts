import { at } from '../../base';
import { DECK_AWASH, floodEnd, GRAVITY, stateAtLevel, type FloodPlan } from '../../stability';
import { SHARP_EDGE } from '../hydraulics/orifice';
import { UPRIGHT_DEFAULTS } from './defaults';
import type { ResolvedShip, ResolvedSpace } from './resolved';
import type { UprightCompartment, UprightSizing } from './types';

const BREADTH = UPRIGHT_DEFAULTS.openingBreadth.value;
const HEIGHT = UPRIGHT_DEFAULTS.openingHeight.value;
/** Clear area of one standard opening, m2. */
export const STANDARD_AREA = BREADTH * HEIGHT;
const LARGEST_VENT = 0.5;
const LEAST_HEAD = 0.02;
const LEVELS = 60;

/** Height over breadth of every sized opening. */
export const SHAPE = HEIGHT / BREADTH;
/** From this share of the standard openings' area on they are cut as they are; below it, to size. Judgement. */
const NEAR_STANDARD = 0.9;

/** The openings of one compartment: so many, each of this area. */
interface OpeningSet {
  readonly count: number;
  readonly each: number;
}

/** Fewest openings for an area, in pairs where asked: standard ones, or cut to size when those are too large. */
export function openingSet(needed: number, inPairs: boolean): OpeningSet {
  if (!(needed > 0)) return { count: 0, each: 0 };
  const raw = Math.ceil(needed / STANDARD_AREA - 1e-9);
  const count = inPairs ? raw + (raw % 2) : raw;
  const each = needed >= NEAR_STANDARD * count * STANDARD_AREA ? STANDARD_AREA : needed / count;
  return { count, each };
}

/** Length of cut, m, round one opening of this area. */
export function cutAround(area: number): number {
  const breadth = Math.sqrt(area / SHAPE);
  return 2 * breadth * (1 + SHAPE);
}

/** Height above the keel of the middle of a sized opening: just clear of the floor. */
export function sizedOpeningHeight(compartment: UprightCompartment): number {
  if (compartment.entry !== undefined) return compartment.entry;
  const room = compartment.z1 - compartment.z0;
  return compartment.z0 + Math.min(room, HEIGHT) / 2 + Math.min(0.2, Math.max(0, room - HEIGHT) / 2);
}

/** Whether a compartment reaches both sides, so that its openings come in pairs. */
export function isPaired(compartment: UprightCompartment): boolean {
  return compartment.y0 < 0 && compartment.y1 > 0;
}

/**
 * Opening area (m2) of each space, so that all keep to one common level and the whole takes `seconds`: the sum of
 * volume over the root of the head, along the path, over Cd t sqrt(2 g).
 */
function neededAreas(plan: FloodPlan, spaces: readonly ResolvedSpace[], seconds: number): number[] {
  const end = floodEnd(plan, DECK_AWASH).level;
  const sums = spaces.map(() => 0);
  let before = stateAtLevel(plan, 0);
  for (let k = 1; k <= LEVELS; k++) {
    const now = stateAtLevel(plan, (end * k) / LEVELS);
    const level = (now.level + before.level) / 2;
    const draught = (now.draught + before.draught) / 2;
    spaces.forEach(({ compartment }, i) => {
      const entry = sizedOpeningHeight(compartment);
      const head = Math.max(LEAST_HEAD, draught - Math.max(level, entry));
      const volume = at(now.volumes, i) - at(before.volumes, i);
      sums[i] = at(sums, i) + volume / Math.sqrt(head);
    });
    before = now;
  }
  return sums.map((sum, i) => {
    const late = lateSum(at(spaces, i), plan.depth);
    return (late ?? sum) / (SHARP_EDGE * seconds * Math.sqrt(2 * GRAVITY));
  });
}

/** Share of the target time in which a space kept until late is to fill once the sea reaches it. Judgement. */
const LATE_SHARE = 0.25;

/** The same sum for a space whose openings are cut high: all its volume in the last part of the time. */
function lateSum({ compartment, solid }: ResolvedSpace, depth: number): number | undefined {
  const { entry } = compartment;
  if (entry === undefined) return undefined;
  const head = Math.max(LEAST_HEAD, (depth - entry) / 2);
  return solid.capacity / Math.sqrt(head) / LATE_SHARE;
}

function noteFor(compartment: UprightCompartment, openings: number, draught: number): string | undefined {
  if (openings === 0) return 'The sea does not reach it on the common path: it needs no opening.';
  const sides = isPaired(compartment) ? 2 : 1;
  const fit = Math.floor((compartment.x1 - compartment.x0) / (2 * BREADTH)) * sides;
  if (openings > fit)
    return `Structure limits it: ${openings} openings do not fit into ${sides} side(s) of its length with steel left between; cut the floor or the bulkheads too, or take longer.`;
  if (sizedOpeningHeight(compartment) > draught)
    return 'Its opening lies above the light waterline: the sea reaches it only once she has sunk to it.';
  return undefined;
}

/** Openings, cuts and air escapes of every flooded compartment for a target time, port and starboard alike. */
export function sizeOpenings(
  ship: ResolvedShip,
  plan: FloodPlan,
  seconds: number,
  ventShare: number,
): UprightSizing[] {
  const spaces = plan.spaces.map((space, i) => ({
    ...space,
    sill: at(ship.spaces, i).compartment.entry ?? space.floor,
  }));
  const level = { ...plan, mismatch: 0, spaces };
  const draught = stateAtLevel(level, 0).draught;
  return neededAreas(level, ship.spaces, seconds).map((needed, i) => {
    const { compartment } = at(ship.spaces, i);
    const { count, each } = openingSet(needed, isPaired(compartment));
    const area = count * each;
    const ventArea = Math.max(0.1, ventShare) * area;
    const note = noteFor(compartment, count, draught);
    return {
      compartment: compartment.id,
      openings: count,
      openingArea: each,
      area,
      cutLength: count * cutAround(each),
      ventArea,
      ventCount: count === 0 ? 0 : Math.max(2, Math.ceil(ventArea / LARGEST_VENT)),
      fillMinutes: (count === 0 ? seconds : (seconds * needed) / area) / 60,
      ...(note === undefined ? {} : { note }),
    };
  });
}
