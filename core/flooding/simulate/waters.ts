import { at } from '../../base';
import { dry, fillLevel, type Attitude, type Wetted } from '../../stability';
import type { FloodableShip } from './ship';

/** The water in one room, as the simulation carries it from step to step. */
export interface Water {
  volume: number;
  level: number;
  /** Level in the room itself, without the pressure of a full one. */
  filledTo: number;
  isFull: boolean;
  /** Free surface, m2, never less than a small share of the floor. */
  surface: number;
  /** Head of the air above the water, m, and how it stiffens with volume, m per m3. */
  air: number;
  airStiffness: number;
  /** Pressure times volume of the air once it is shut in, kPa m3. */
  shutAir: number;
  isBreathing: boolean;
  /** Share of the flow in that the air escapes let pass. */
  passes: number;
  readonly sums: Wetted;
}

/** Floor area of a room over which volume and level trade, m2. */
function floorArea(ship: FloodableShip, room: number): number {
  const { solid, top, floor } = at(ship.rooms, room);
  return solid.capacity / Math.max(0.1, top - floor);
}

/** The rooms as they are at the start, with what water they hold. */
export function startingWaters(ship: FloodableShip, aboard: readonly number[]): Water[] {
  return ship.rooms.map((room, i) => ({
    volume: aboard[i] ?? 0,
    level: room.floor,
    filledTo: room.floor,
    isFull: false,
    surface: 1,
    air: 0,
    airStiffness: 0,
    shutAir: 0,
    isBreathing: true,
    passes: 1,
    sums: dry(),
  }));
}

/** A full room stands under a thin pipe, so that its pressure can rise above its top. */
const PIPE = 1e-3;
const LEAST_SURFACE = 0.02;
/** Share of a room from which it counts as full. */
const FULL_FROM = 0.9999;

/** Water a room takes before the pipe begins, m3. */
export function fullVolume(ship: FloodableShip, room: number): number {
  return FULL_FROM * at(ship.rooms, room).solid.capacity;
}

/** Settles every room's water in this attitude: level, free surface and sums. */
export function settleWaters(ship: FloodableShip, waters: readonly Water[], position: Attitude): void {
  ship.rooms.forEach((room, i) => {
    const water = at(waters, i);
    const plan = floorArea(ship, i);
    const level = fillLevel(room.solid, position, water.volume, water.sums, water.filledTo);
    water.filledTo = level;
    const over = water.volume - fullVolume(ship, i);
    water.isFull = over >= 0;
    water.level = over > 0 ? level + over / (PIPE * plan) : level;
    water.surface = water.isFull ? PIPE * plan : Math.max(water.sums.area, LEAST_SURFACE * plan);
  });
}
