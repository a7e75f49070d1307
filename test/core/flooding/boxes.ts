import {
  hullFromParticulars,
  hullSolid,
  SEA_WATER,
  spaceSolid,
  type HullForm,
  type Space,
} from '../../../core/stability';
import { SEA, SHARP_EDGE, type FloodableShip, type Link, type Room } from '../../../core/flooding';

export const barge: HullForm = hullFromParticulars({
  length: 100,
  breadth: 20,
  depth: 10,
  draught: 2,
  blockCoefficient: 1,
  waterplaneCoefficient: 1,
});

export const wholeHold: Space = {
  id: 'hold',
  x0: 0,
  x1: 100,
  y0: -10,
  y1: 10,
  z0: 0,
  z1: 10,
  permeability: 1,
};

export function roomOf(space: Space, hull: HullForm = barge): Room {
  return { id: space.id, solid: spaceSolid(hull, space, 5), floor: space.z0, top: space.z1 };
}

export function link(change: Partial<Link>): Link {
  const still = { id: 'opening', a: SEA, b: 0, x: 50, y: 0, z: 0, height: 0 };
  return { ...still, area: 1, discharge: SHARP_EDGE, isVent: false, ...change };
}

/** A wide air escape high up, so that the air does not hold the water back. */
export function wideVent(room: number, z = 100): Link {
  return link({ id: 'vent', b: room, z, area: 1e4, isVent: true });
}

/** The barge of 100 x 20 x 10 m and 4,100 t. */
export function bargeShip(kg: number, rooms: readonly Room[], links: readonly Link[]): FloodableShip {
  return {
    hull: hullSolid(barge, 20),
    length: 100,
    breadth: 20,
    depth: 10,
    lightVolume: 4100 / SEA_WATER,
    centre: { x: 50, y: 0, z: kg },
    rooms,
    links,
  };
}
