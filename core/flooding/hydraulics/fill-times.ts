import { GRAVITY, SEA_WATER } from '../../stability';
import { SHARP_EDGE } from './orifice';

function strength(area: number, discharge: number): number {
  return discharge * area * Math.sqrt(2 * GRAVITY);
}

/** A compartment with a floor area of free water (m2, permeability included) and one opening. */
export interface Filling {
  readonly plan: number;
  readonly opening: number;
  /** Water outside above the floor, m, fixed. */
  readonly outside: number;
  /** Height of the opening above the floor, m. */
  readonly sill: number;
}

/**
 * Seconds to fill to a level (m above the floor) through an opening at a height: first a jet into air under a
 * constant head, then under a falling one.
 * @source Integration of Torricelli's law; the drowned part takes twice the time of the initial rate.
 */
export function fillTime(filling: Filling, level: number, discharge = SHARP_EDGE): number {
  const k = strength(filling.opening, discharge);
  const head = filling.outside - filling.sill;
  const dry = (filling.plan * Math.min(level, filling.sill)) / (k * Math.sqrt(head));
  if (level <= filling.sill) return dry;
  return dry + ((2 * filling.plan) / k) * (Math.sqrt(head) - Math.sqrt(filling.outside - level));
}

/** Seconds for a volume (m3) to enter under a constant head (m). */
export function constantHeadTime(
  volume: number,
  opening: number,
  head: number,
  discharge = SHARP_EDGE,
): number {
  return volume / (strength(opening, discharge) * Math.sqrt(head));
}

/** Seconds for the levels of two rooms to come from a difference of `from` to one of `to` metres. */
export function equalisationTime(
  rooms: readonly [number, number],
  opening: number,
  difference: { from: number; to: number },
  discharge = SHARP_EDGE,
): number {
  const [a, b] = rooms;
  const k = strength(opening, discharge);
  return ((2 * a * b) / ((a + b) * k)) * (Math.sqrt(difference.from) - Math.sqrt(difference.to));
}

/**
 * Seconds for a box barge to go from level 0 to `sunk` metres of water, all openings in the floor: the difference
 * of levels stays at her light draught, so the flow is constant.
 */
export function bargeSinkTime(
  barge: { waterplane: number; displacement: number },
  opening: number,
  sunk: number,
  discharge = SHARP_EDGE,
): number {
  const head = barge.displacement / (SEA_WATER * barge.waterplane);
  return (barge.waterplane * sunk) / (strength(opening, discharge) * Math.sqrt(head));
}

/** Opening area, m2, that lets a volume in within a time (s) under a mean head (m). */
export function openingForTime(
  volume: number,
  seconds: number,
  head: number,
  discharge = SHARP_EDGE,
): number {
  return volume / (discharge * seconds * Math.sqrt(2 * GRAVITY * head));
}

/**
 * Seconds of cross-flooding between two rooms through ducts, from a head H0 to a head hf.
 * @source IMO MSC.245(83) and MSC.362(92), formula from memory.
 */
export function crossFloodingTime(
  crossing: { volume: number; area: number; factor: number },
  head: { from: number; to: number },
): number {
  const rest = head.to / head.from;
  const rate = (Math.sqrt(2 * GRAVITY * head.from) * (1 - rest)) / (1 - Math.sqrt(rest));
  return (2 * crossing.volume) / (crossing.area * crossing.factor * rate);
}
