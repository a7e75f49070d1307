import { DEGREE } from '../constants';
import { dry } from '../geometry/wetted';
import { equilibriumHeel, heelSearch } from '../body/equilibrium-heel';
import { gmUpright, waterMoment, weightMoment, type Centre, type WetShip } from '../body/righting';
import { floodEnd, stateAtLevel, type FloodEnd, type FloodPlan, type LevelState } from './flood-plan';

/** The ship at one flood level; the water moments are worked out once and serve every centre of gravity. */
export interface PathLevel {
  readonly state: LevelState;
  readonly ship: WetShip;
  readonly waterMoment: (heel: number) => number;
}

/** The flooding path of one plan. */
export interface FloodPath {
  readonly plan: FloodPlan;
  readonly end: FloodEnd;
  readonly levels: readonly PathLevel[];
}

/** Where she comes to rest at one level; no heel means no rest below 60 degrees. Heel in degrees. */
export interface PathPoint {
  readonly level: number;
  readonly draught: number;
  readonly gm: number;
  readonly heel: number | undefined;
}

/** The first centimetre of free water, where the small-angle GM is lowest. */
const FIRST_WATER = 0.01;

function remembered(moment: (heel: number) => number): (heel: number) => number {
  const known = new Map<number, number>();
  return heel => {
    const before = known.get(heel);
    if (before !== undefined) return before;
    const value = moment(heel);
    known.set(heel, value);
    return value;
  };
}

/** The ship of a plan with the water at one common level. */
export function levelOf(plan: FloodPlan, level: number): PathLevel {
  const state = stateAtLevel(plan, level);
  const ship: WetShip = {
    hull: plan.hull,
    spaces: plan.spaces.map(space => space.solid),
    volumes: state.volumes,
    lightVolume: plan.lightVolume,
  };
  const sum = dry();
  const levels: number[] = [];
  return { state, ship, waterMoment: remembered(heel => waterMoment(ship, heel, sum, levels)) };
}

/**
 * Draught as a share of the depth at which the deck counts as awash and the section check ends: the last
 * centimetres of freeboard have no range left for any ship. Judgement.
 */
export const DECK_AWASH = 0.97;

/** The path from dry to the deck awash in equal steps, with the first centimetre before them. */
export function floodPath(plan: FloodPlan, steps = 40): FloodPath {
  const judged = floodEnd(plan, DECK_AWASH);
  const end = { sinks: judged.sinks && floodEnd(plan).sinks, level: judged.level };
  const levels = [0, Math.min(FIRST_WATER, end.level / steps)];
  for (let i = 1; i <= steps; i++) levels.push((end.level * i) / steps);
  return { plan, end, levels: levels.map(level => levelOf(plan, level)) };
}

/** Rest at one level, let go at `start` degrees; a heel of the path before, or upright with a nudge. */
export function restAt(at: PathLevel, plan: FloodPlan, centre: Centre, start = 0): PathPoint {
  const search = heelSearch(1e-8 * at.ship.lightVolume * plan.breadth);
  const moment = (heel: number): number =>
    at.waterMoment(heel) - weightMoment(plan.lightVolume, centre, heel);
  const heel = equilibriumHeel(moment, start * DEGREE, search);
  return {
    level: at.state.level,
    draught: at.state.draught,
    gm: gmUpright(at.ship, centre.kg),
    heel: heel === undefined ? undefined : heel / DEGREE,
  };
}

/**
 * Equilibrium heel at every level, each found from the heel of the level before: she does not come back upright
 * unless the moment brings her back. Once there is no rest, there is none later.
 */
export function rollOverPath(path: FloodPath, centre: Centre): PathPoint[] {
  const points: PathPoint[] = [];
  let start: number | undefined = 0;
  for (const at of path.levels) {
    const point: PathPoint =
      start === undefined
        ? { ...restAt(at, path.plan, centre), heel: undefined }
        : restAt(at, path.plan, centre, start);
    points.push(point);
    start = point.heel;
  }
  return points;
}
