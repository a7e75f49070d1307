import { SEA_WATER } from '../constants';
import { kgAfterRemoval } from './metacentric-height';

/** A box barge, metres and metres above the keel. */
export interface Box {
  readonly length: number;
  readonly breadth: number;
  readonly draught: number;
  readonly kg: number;
}

/** A full-depth compartment open to the sea; `off` is the distance of its middle from the centreline. */
export interface OpenCompartment {
  readonly length: number;
  readonly breadth: number;
  readonly permeability: number;
  readonly off: number;
}

/** What a flooded compartment does to a box barge. */
export interface FloodedBox {
  readonly draught: number;
  readonly sinkage: number;
  readonly gm: number;
  /** Tonnes that GM refers to: the displacement of the method. */
  readonly displacement: number;
  readonly listDegrees: number;
  /** Tonnes of water aboard; only the method of added weight has any. */
  readonly water: number;
}

/**
 * Flooding by lost buoyancy: the displacement stays, the flooded part of the waterplane is lost.
 * @source Barrass and Derrett, Ship Stability for Masters and Mates, bilging chapters.
 */
export function lostBuoyancy(box: Box, hole: OpenCompartment): FloodedBox {
  const area = box.length * box.breadth;
  const lost = hole.permeability * hole.length * hole.breadth;
  const sinkage = (lost * box.draught) / (area - lost);
  const volume = area * box.draught;
  const draught = box.draught + sinkage;
  const shift = (lost * hole.off) / (area - lost);
  const whole = (box.length * box.breadth ** 3) / 12;
  const own = (hole.permeability * hole.length * hole.breadth ** 3) / 12 + lost * hole.off ** 2;
  const inertia = whole - own - (area - lost) * shift ** 2;
  const gm = draught / 2 + inertia / volume - box.kg;
  const listDegrees = (Math.atan(shift / gm) * 180) / Math.PI;
  return { draught, sinkage, gm, displacement: volume * SEA_WATER, listDegrees, water: 0 };
}

/** Flooding by added weight: the water counts as cargo up to the waterline, with its free surface. */
export function addedWeight(box: Box, hole: OpenCompartment): FloodedBox {
  const area = box.length * box.breadth;
  const lost = hole.permeability * hole.length * hole.breadth;
  const draught = (area * box.draught) / (area - lost);
  const light = area * box.draught * SEA_WATER;
  const water = lost * draught * SEA_WATER;
  const displacement = light + water;
  const kg = kgAfterRemoval(light, box.kg, -water, draught / 2);
  const freeSurface = (hole.permeability * hole.length * hole.breadth ** 3 * SEA_WATER) / 12 / displacement;
  const gm = draught / 2 + box.breadth ** 2 / (12 * draught) - kg - freeSurface;
  const listDegrees = (Math.atan((water * hole.off) / (displacement * gm)) * 180) / Math.PI;
  return { draught, sinkage: draught - box.draught, gm, displacement, listDegrees, water };
}
