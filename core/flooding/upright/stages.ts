import { at } from '../../base';
import { gmUpright, levelOf, restAt, type FloodPath, type PathLevel, type PathPoint } from '../../stability';
import type { SimulationResult, Snapshot } from '../simulate/ship';
import type { ScreenCase } from './cases';
import { worstBeforeUnder } from './hear-simulation';
import { centreAfter, type ResolvedShip } from './resolved';
import type { UprightStage } from './types';

/** Stages listed besides those at which something happens. */
const LISTED = 16;

function waterOf(path: FloodPath): number[] {
  return path.levels.map(({ state }) => state.volumes.reduce((sum, v) => sum + v, 0));
}

/** Position of a value in a rising list as a fractional index. */
function fractionalIndex(rising: readonly number[], value: number): number {
  const next = rising.findIndex(v => v >= value);
  if (next === -1) return rising.length - 1;
  if (next === 0) return 0;
  const [a, b] = [at(rising, next - 1), at(rising, next)];
  return b > a ? next - 1 + (value - a) / (b - a) : next;
}

function between(points: readonly PathPoint[], place: number, value: (p: PathPoint) => number): number {
  const [a, b] = [at(points, Math.floor(place)), at(points, Math.ceil(place))];
  return value(a) + (place - Math.floor(place)) * (value(b) - value(a));
}

/**
 * Greatest heel over the cases at a level of the path, each let go at the heel of the level before; none when one of
 * them finds no rest. Nothing is read between the levels: where she comes back upright the heel jumps.
 */
function heelAt(
  ship: ResolvedShip,
  cases: readonly ScreenCase[],
  place: number,
  level: PathLevel,
): number | undefined {
  let greatest = 0;
  for (const { points, path, displacement, kg } of cases) {
    const before = at(points, Math.floor(place)).heel;
    if (before === undefined) return undefined;
    const { heel } = restAt(level, path.plan, centreAfter(ship.input, displacement, kg), before);
    if (heel === undefined) return undefined;
    greatest = Math.max(greatest, Math.abs(heel));
  }
  return greatest;
}

function chosen(history: readonly Snapshot[], depth: number): Snapshot[] {
  const most = history.reduce((top, { water }) => Math.max(top, water), 1e-9);
  const worst = worstBeforeUnder(history, depth);
  const last = history.length - 1;
  let next = 0;
  return history.filter((snapshot, i) => {
    const isDue = snapshot.water >= (next * most) / LISTED - 1e-9;
    if (isDue) next = Math.floor((snapshot.water / most) * LISTED + 1e-9) + 1;
    return isDue || snapshot.event !== undefined || snapshot === worst || i === last;
  });
}

/**
 * Stages of the flooding: the simulation at even steps of water aboard, at her greatest list and whenever something happens, each with
 * the section check at the level where as much water is aboard upright; past the last level that the check follows a
 * stage says so.
 * @param cases the cases of one displacement and one mismatch (they share a path), for every KG.
 */
export function stagesOf(
  ship: ResolvedShip,
  run: SimulationResult,
  cases: readonly ScreenCase[],
  likely: ScreenCase,
): UprightStage[] {
  const water = waterOf(likely.path);
  const followed = likely.path.end.sinks ? at(water, water.length - 1) : Infinity;
  return chosen(run.history, ship.input.particulars.depth).map((snapshot): UprightStage => {
    const place = fractionalIndex(water, snapshot.water);
    const level = levelOf(
      likely.path.plan,
      between(likely.points, place, point => point.level),
    );
    const heel = heelAt(ship, cases, place, level);
    return {
      t: snapshot.t,
      level: level.state.level,
      gm: gmUpright(level.ship, centreAfter(ship.input, likely.displacement, likely.kg).kg),
      ...(heel === undefined ? {} : { heel }),
      list: snapshot.heel,
      trim: snapshot.trim,
      draught: snapshot.draught,
      ...(snapshot.event === undefined ? {} : { event: snapshot.event }),
      ...(snapshot.water > followed ? { isPastCheck: true } : {}),
    };
  });
}
