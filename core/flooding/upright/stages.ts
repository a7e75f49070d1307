import type { FloodPath, PathPoint } from '../../stability';
import type { SimulationResult, Snapshot } from '../simulate/ship';
import type { ScreenCase } from './cases';
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
  const [a, b] = [rising[next - 1] ?? 0, rising[next] ?? 0];
  return b > a ? next - 1 + (value - a) / (b - a) : next;
}

function between(points: readonly PathPoint[], at: number, value: (p: PathPoint) => number): number {
  const [a, b] = [points[Math.floor(at)], points[Math.ceil(at)]];
  if (!a || !b) return Number.NaN;
  return value(a) + (at - Math.floor(at)) * (value(b) - value(a));
}

/** Greatest heel over the cases at this place of the path; none when one of them has lost its equilibrium. */
function heelAt(cases: readonly ScreenCase[], at: number): number | undefined {
  let greatest = 0;
  for (const { points } of cases) {
    const ends = [points[Math.floor(at)], points[Math.ceil(at)]];
    if (ends.some(point => point?.heel === undefined)) return undefined;
    greatest = Math.max(greatest, Math.abs(between(points, at, point => point.heel ?? 0)));
  }
  return greatest;
}

function chosen(history: readonly Snapshot[]): Snapshot[] {
  const most = history.reduce((top, { water }) => Math.max(top, water), 1e-9);
  const last = history.length - 1;
  let next = 0;
  return history.filter((snapshot, i) => {
    const isDue = snapshot.water >= (next * most) / LISTED - 1e-9;
    if (isDue) next = Math.floor((snapshot.water / most) * LISTED + 1e-9) + 1;
    return isDue || snapshot.event !== undefined || i === last;
  });
}

/**
 * Stages of the flooding: the simulation at even steps of water aboard and whenever something happens, each with
 * the roll-over check at the level where as much water is aboard upright.
 * @param cases the cases of one displacement and one mismatch (they share a path), for every KG.
 */
export function stagesOf(
  run: SimulationResult,
  cases: readonly ScreenCase[],
  likely: ScreenCase,
): UprightStage[] {
  const water = waterOf(likely.path);
  return chosen(run.history).map((snapshot): UprightStage => {
    const at = fractionalIndex(water, snapshot.water);
    const heel = heelAt(cases, at);
    return {
      t: snapshot.t,
      level: between(likely.points, at, point => point.level),
      gm: between(likely.points, at, point => point.gm),
      ...(heel === undefined ? {} : { heel }),
      list: snapshot.heel,
      trim: snapshot.trim,
      draught: snapshot.draught,
      ...(snapshot.event === undefined ? {} : { event: snapshot.event }),
    };
  });
}
