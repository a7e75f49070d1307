import { dayOf } from '../../calendar';
import type { ScheduleProblem } from '../model';
import type { ScheduleResult } from '../result';
import { schedule, type ScheduleOptions } from '../schedule';
import { levelSchedule } from './level-schedule';

export interface LeastCrewOptions extends ScheduleOptions {
  /** The last day by which all must be finished. */
  readonly finishBy: string;
  /** What one unit of each resource at hand costs, against each other; only these are made fewer. */
  readonly unitCosts: Readonly<Record<string, number>>;
}

/** Fewest units with which the work is done in time, and a schedule that needs no more. */
export interface LeastCrew {
  readonly units: Readonly<Record<string, number>>;
  readonly cost: number;
  readonly result: ScheduleResult;
}

/**
 * The opposite question of levelling: a fixed last day, and as few units at hand as can be found. It starts from the
 * peaks of a levelled schedule and takes away the dearest unit that can be spared, until none can.
 * @returns undefined when even all units at hand do not finish in time.
 */
export function leastCrew(problem: ScheduleProblem, options: LeastCrewOptions): LeastCrew | undefined {
  const ids = problem.resources.map(resource => resource.id).filter(id => (options.unitCosts[id] ?? 0) > 0);
  let result = levelSchedule(problem, { ...options, objective: 'peak', weights: options.unitCosts });
  if (!isInTime(result, options.finishBy)) return undefined;
  let units = Object.fromEntries(ids.map(id => [id, result.resourcePeaks[id]?.units ?? 0]));
  for (let spared = true; spared;) {
    spared = false;
    for (const id of ids.toSorted((a, b) => (options.unitCosts[b] ?? 0) - (options.unitCosts[a] ?? 0))) {
      const fewer = { ...units, [id]: (units[id] ?? 0) - 1 };
      const tried =
        (fewer[id] ?? 0) < 1 ? undefined : schedule(withUnits(problem, fewer), inTime(problem, options));
      if (!tried || !isInTime(tried, options.finishBy)) continue;
      [units, result, spared] = [fewer, tried, true];
      break;
    }
  }
  const cost = ids.reduce((sum, id) => sum + (units[id] ?? 0) * (options.unitCosts[id] ?? 0), 0);
  return { units, cost, result };
}

/** Stops the search as soon as the last day is kept. */
function inTime(problem: ScheduleProblem, options: LeastCrewOptions): ScheduleOptions {
  let isKept = false;
  const lastMoment = dayOf(options.finishBy) - dayOf(problem.horizonStart) + 1;
  return {
    ...options,
    onProgress: progress => {
      isKept = progress.finish !== undefined && progress.finish <= lastMoment;
    },
    shouldStop: () => isKept || options.shouldStop?.() === true,
  };
}

function isInTime(result: ScheduleResult, finishBy: string): boolean {
  return result.finish !== undefined && result.finish <= finishBy;
}

/** The problem with fewer units at hand; where there are fewer already, those stay. */
function withUnits(problem: ScheduleProblem, units: Readonly<Record<string, number>>): ScheduleProblem {
  const limited = problem.resources.map(resource => {
    const most = units[resource.id];
    if (most === undefined) return resource;
    const changes = (resource.capacityChanges ?? []).map(change => ({
      ...change,
      capacity: Math.min(most, change.capacity),
    }));
    return { ...resource, capacity: Math.min(most, resource.capacity), capacityChanges: changes };
  });
  return { ...problem, resources: limited };
}
