import { known } from '../../base';
import { dayOf } from '../../calendar';
import type { ScheduleProblem } from '../model';
import type { ScheduleResult } from '../result';
import { buildResult } from '../build-result';
import type { Placed } from '../placed';
import { prepare, type Prepared, type ScheduleOptions } from '../schedule';
import { drained } from './drained';
import { levellingSteps, type LevelledSchedule, type LevelProgress } from './level-schedule';
import { usesOf } from './uses';

export interface LeastCrewOptions extends ScheduleOptions {
  /** The last day by which all must be finished. */
  readonly finishBy: string;
  /** Passes spent on each try with fewer units; `schedules` unless given. */
  readonly schedulesEach?: number;
  /** What one unit of each resource at hand costs, against each other; only these are made fewer. */
  readonly unitCosts: Readonly<Record<string, number>>;
}

/** Fewest units with which the work is done in time, and a schedule that needs no more. */
export interface LeastCrew {
  readonly units: Readonly<Record<string, number>>;
  readonly cost: number;
  readonly result: LevelledSchedule;
}

/**
 * The opposite question of levelling: a fixed last day, and as few units at hand as can be found. It starts from the
 * peaks of a levelled schedule and takes units away, the dearest first, as long as the last day can be kept; what
 * cannot be spared once cannot be spared when there is less of the rest.
 * @returns undefined when even all units at hand do not finish in time.
 */
export function leastCrew(problem: ScheduleProblem, options: LeastCrewOptions): LeastCrew | undefined {
  return drained(leastCrewSteps(problem, options));
}

/** The same a schedule at a time, so that the caller can tell how far it is or leave off. */
export function* leastCrewSteps(
  problem: ScheduleProblem,
  options: LeastCrewOptions,
): Generator<LevelProgress, LeastCrew | undefined> {
  const cost = (id: string) => options.unitCosts[id] ?? 0;
  const ids = problem.resources.map(resource => resource.id).filter(id => cost(id) > 0);
  const levelled = yield* levellingSteps(problem, {
    ...options,
    objective: 'peak',
    weights: options.unitCosts,
  });
  if (!isInTime(levelled, options.finishBy)) return undefined;
  let units = new Map(ids.map(id => [id, levelled.resourcePeaks[id]?.units ?? 0]));
  let found: Found | undefined;
  const dearestFirst = ids.toSorted((a, b) => cost(b) - cost(a) || (a < b ? -1 : 1));
  for (const [done, id] of dearestFirst.entries()) {
    while (options.shouldStop?.() !== true) {
      yield { done, of: ids.length };
      const left = known(units, id) - 1;
      const fewer = new Map(units).set(id, left);
      const tried = left < 1 ? undefined : inTime(withUnits(problem, fewer), options);
      if (tried === undefined) break;
      [units, found] = [fewer, tried];
    }
  }
  const total = ids.reduce((sum, id) => sum + known(units, id) * cost(id), 0);
  const crew = { units: Object.fromEntries(units), cost: total };
  if (found === undefined) return { ...crew, result: levelled };
  const { placed, lowerBound, schedules, findings } = found;
  const result = buildResult(placed, Math.min(lowerBound, placed.finish), schedules);
  const uses = levelled.uses && { before: levelled.uses.before, after: usesOf(placed) };
  return { ...crew, result: { ...result, findings, ...(uses === undefined ? {} : { uses }) } };
}

type Found = Prepared & { readonly placed: Placed };

/** A schedule that keeps the last day, as soon as the search has one. */
function inTime(problem: ScheduleProblem, options: LeastCrewOptions): Found | undefined {
  let isKept = false;
  const lastMoment = dayOf(options.finishBy) - dayOf(problem.horizonStart) + 1;
  const prepared = prepare(problem, {
    ...options,
    schedules: options.schedulesEach ?? options.schedules,
    onProgress: progress => {
      isKept = progress.finish !== undefined && progress.finish <= lastMoment;
    },
    shouldStop: () => isKept || options.shouldStop?.() === true,
  });
  return prepared.placed !== undefined && prepared.placed.finish <= lastMoment ? prepared : undefined;
}

function isInTime(result: ScheduleResult, finishBy: string): boolean {
  return result.finish !== undefined && result.finish <= finishBy;
}

/** The problem with fewer units at hand; where there are fewer already, those stay. */
function withUnits(problem: ScheduleProblem, units: ReadonlyMap<string, number>): ScheduleProblem {
  const limited = problem.resources.map(resource => {
    const most = units.get(resource.id);
    if (most === undefined) return resource;
    const changes = (resource.capacityChanges ?? []).map(change => ({
      ...change,
      capacity: Math.min(most, change.capacity),
    }));
    return { ...resource, capacity: Math.min(most, resource.capacity), capacityChanges: changes };
  });
  return { ...problem, resources: limited };
}
