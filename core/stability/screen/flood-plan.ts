import { dry } from '../geometry/wetted';
import { UPRIGHT, wet, type Solid } from '../body/body';
import { fillLevel } from '../body/fill-level';

/** A space the plan floods: where its middle stands and how high the water must stand outside to enter it. */
export interface FloodedSpace {
  readonly solid: Solid;
  readonly floor: number;
  /** Distance of its middle to starboard, m. */
  readonly y: number;
  /** Lowest point where the sea gets in, m above the keel. */
  readonly sill: number;
}

/** The ship and what floods, for one displacement and one unevenness of the openings. */
export interface FloodPlan {
  readonly hull: Solid;
  readonly depth: number;
  readonly breadth: number;
  readonly lightVolume: number;
  readonly spaces: readonly FloodedSpace[];
  /** How far the port side lags behind the starboard side, 0 to 1. */
  readonly mismatch: number;
}

/** Water aboard at a common level, upright. */
export interface LevelState {
  readonly level: number;
  readonly volumes: readonly number[];
  readonly draught: number;
}

/** Upright mean draught, m, at a displaced volume, m3; the depth and more when she cannot carry it. */
export function uprightDraught(hull: Solid, volume: number): number {
  return fillLevel(hull, UPRIGHT, volume, dry());
}

function volumeAt(space: FloodedSpace, level: number, plan: FloodPlan): number {
  const isSlow = space.y < -0.01 * plan.breadth;
  const lag = isSlow ? plan.mismatch * Math.max(0, level - space.floor) : 0;
  return wet(space.solid, UPRIGHT, level - lag, dry()).volume;
}

/** What is aboard when the water inside stands at a common level: spaces the sea has reached, no others. */
export function stateAtLevel(plan: FloodPlan, level: number): LevelState {
  let reached = plan.spaces.map(() => false);
  for (;;) {
    const volumes = plan.spaces.map((space, i) => (reached[i] ? volumeAt(space, level, plan) : 0));
    const displaced = volumes.reduce((sum, v) => sum + v, plan.lightVolume);
    const draught = uprightDraught(plan.hull, displaced);
    const now = plan.spaces.map((space, i) => reached[i] === true || space.sill < draught);
    if (now.every((value, i) => value === reached[i])) return { level, volumes, draught };
    reached = now;
  }
}

/** How the flooding ends: she goes under, or floats with the water inside as high as outside. */
export interface FloodEnd {
  readonly sinks: boolean;
  readonly level: number;
}

/**
 * Where the common level ends: inside as high as outside (she floats), or the draught at `share` of the depth.
 */
export function floodEnd(plan: FloodPlan, share = 1): FloodEnd {
  const under = share * plan.depth;
  const goesOn = (level: number): boolean => {
    const { draught } = stateAtLevel(plan, level);
    return draught < under - 1e-9 && level < draught;
  };
  let low = 0;
  let high = plan.depth;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (goesOn(middle)) low = middle;
    else high = middle;
  }
  return { sinks: stateAtLevel(plan, high).draught >= under - 1e-6, level: low };
}
