import type { Solid, Wetted } from '../../stability';

/** The sea as a party to a link. */
export const SEA = -1;

/** Where water can pass: from room `a` to room `b`, or between the sea and a room. Metres and m2. */
export interface Link {
  readonly id: string;
  /** Number of the room, or {@link SEA}. */
  readonly a: number;
  readonly b: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Height of the opening; 0 for a hole in a floor or a deck. */
  readonly height: number;
  readonly area: number;
  readonly discharge: number;
  /** An air escape; it takes water too once it is under. */
  readonly isVent: boolean;
}

/** A room that water can enter. */
export interface Room {
  readonly id: string;
  readonly solid: Solid;
  readonly floor: number;
  readonly top: number;
}

/** A point of the ship, metres from the aft perpendicular, the centreline and the keel. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A ship ready to be flooded. */
export interface FloodableShip {
  readonly hull: Solid;
  readonly length: number;
  readonly breadth: number;
  readonly depth: number;
  readonly lightVolume: number;
  readonly centre: Point;
  readonly rooms: readonly Room[];
  readonly links: readonly Link[];
}

/** How the simulation is run. */
export interface SimulationOptions {
  /** Seconds to follow at most. */
  readonly seconds: number;
  /** Depth of the water, m; without it the bottom is never reached. */
  readonly waterDepth?: number;
  /** The nudge given to a ship that is unstable upright, degrees, to starboard when positive. Default 0.1. */
  readonly disturbance?: number;
  /** Greatest time step, s; default a three-hundredth of the time followed. */
  readonly longestStep?: number;
  /** Holds the ship at this draught, upright: a model test with a fixed outside level. */
  readonly heldAt?: number;
  /** Water aboard at the start, m3 in each room; none when absent. */
  readonly aboard?: readonly number[];
  /** Greatest rate of heel followed, degrees per second. Judgement, default 2. */
  readonly turnRate?: number;
}

/** How she lies: level of the sea in turned axes (m), heel in radians to starboard, slope of the water by the stern. */
export interface Position {
  level: number;
  heel: number;
  slope: number;
  /** Which end rests on the bottom. */
  ground: 'none' | 'stern' | 'bow' | 'both';
  /** What the hull displaces as she lies. */
  readonly sums: Wetted;
}

/** The ship at one moment. Heel in degrees to starboard, trim in metres by the stern. */
export interface Snapshot {
  readonly t: number;
  readonly water: number;
  readonly volumes: readonly number[];
  readonly levels: readonly number[];
  readonly heel: number;
  readonly trim: number;
  readonly draught: number;
  readonly event?: string;
}

export type SimulationOutcome = 'sunk' | 'on the bottom' | 'rolled over' | 'afloat' | 'still flooding';

export interface SimulationResult {
  readonly outcome: SimulationOutcome;
  /** Seconds at the end. */
  readonly seconds: number;
  readonly history: readonly Snapshot[];
  /** Seconds at which each room was full to 98 %; absent for those that were not. */
  readonly fullAt: readonly (number | undefined)[];
  /** Difference between the water aboard and what came in from the sea, over the water aboard. */
  readonly volumeError: number;
  readonly steps: number;
  /** Rooms in which air was trapped at the end, with the share of the room it holds. */
  readonly trappedAir: readonly { readonly room: number; readonly share: number }[];
}
