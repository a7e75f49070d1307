import { randomStream } from '../../base';
import { dayOf } from '../../calendar';
import { buildResult } from '../build-result';
import type { ScheduleProblem } from '../model';
import { placeAll, type Placed } from '../placed';
import type { ScheduleResult } from '../result';
import { prepare, type ScheduleOptions } from '../schedule';
import { isLess, LevelState } from './level-state';
import { LEVELLING_OBJECTIVES, type LevellingKind, type Use } from './objective';
import { drained } from './drained';
import { Shaker } from './shaker';
import { usesOf } from './uses';

export interface LevellingOptions extends ScheduleOptions {
  readonly objective: LevellingKind;
  /** What hiring and releasing one unit of each resource costs, against each other; absent: all 1. */
  readonly weights?: Readonly<Record<string, number>>;
  /** The last day by which all must be finished; absent: the finish of the best schedule. */
  readonly finishBy?: string;
  /** How often a few activities are shaken up and settled anew, at most; it ends sooner when that has long helped nothing. */
  readonly rounds?: number;
}

/** How far levelling is: rounds done, and the most there can be. */
export interface LevelProgress {
  readonly done: number;
  readonly of: number;
}

/** A levelled schedule, with the use of each resource before and after, by id; absent when there is no schedule. */
export interface LevelledSchedule extends ScheduleResult {
  readonly uses?: Uses;
}

/** The use of each resource, by id, as the search left it and as it is now. */
export interface Uses {
  readonly before: Readonly<Record<string, Use>>;
  readonly after: Readonly<Record<string, Use>>;
}

/** Rounds for each activity, and the fewest; half as many without any gain end the search. */
const ROUNDS_EACH = 6;
const FEWEST_ROUNDS = 400;

/**
 * Levels the use of resources: the finish stays (or a stated last day is kept), every rule is kept, and crews and
 * cranes are used as evenly, or with as low a peak, or with as little hiring and releasing, as can be found.
 * @returns the levelled schedule; what keeps an activity from being earlier may then be the levelling itself.
 */
export function levelSchedule(problem: ScheduleProblem, options: LevellingOptions): LevelledSchedule {
  return drained(levellingSteps(problem, options));
}

/** The same a round at a time, so that the caller can tell how far it is or leave off. */
export function* levellingSteps(
  problem: ScheduleProblem,
  options: LevellingOptions,
): Generator<LevelProgress, LevelledSchedule> {
  const prepared = prepare(problem, options);
  if (!prepared.placed) return prepared.failed;
  const { placed, lowerBound, schedules, findings } = prepared;
  const lastMoment =
    options.finishBy === undefined ? placed.finish : dayOf(options.finishBy) - placed.compiled.first + 1;
  const levelled = lastMoment < placed.finish ? placed : yield* level(placed, lastMoment, options);
  const result = buildResult(levelled, Math.min(lowerBound, levelled.finish), schedules);
  return { ...result, findings, uses: { before: usesOf(placed), after: usesOf(levelled) } };
}

/**
 * Settles every activity at its cheapest place, then shakes up a few at a time, settles what is near them, and keeps
 * what is no worse. The same seed gives the same answer.
 */
function* level(
  placed: Placed,
  lastMoment: number,
  options: LevellingOptions,
): Generator<LevelProgress, Placed> {
  const random = randomStream(options.seed, 'levelling');
  const { problem } = placed.compiled;
  const weights = problem.resources.map(
    resource => options.weights?.[resource.id] ?? (options.weights ? 0 : 1),
  );
  const state = new LevelState(copy(placed), lastMoment, LEVELLING_OBJECTIVES[options.objective], weights);
  const shaker = new Shaker(state, random);
  shaker.settleAll();
  const rounds = options.rounds ?? Math.max(FEWEST_ROUNDS, ROUNDS_EACH * problem.activities.length);
  let best = state.cost();
  for (
    let round = 0, idle = 0;
    round < rounds && idle < rounds / 2 && options.shouldStop?.() !== true;
    round++
  ) {
    yield { done: round, of: rounds };
    const before = state.placed.starts.slice();
    shaker.shake();
    const cost = state.cost();
    if (isLess(best, cost)) state.restore(before);
    idle = isLess(cost, best) ? 0 : idle + 1;
    if (isLess(cost, best)) best = cost;
  }
  return placeAll(placed.compiled, state.placed.starts, state.placed.finishes);
}

function copy(placed: Placed): Placed {
  return placeAll(placed.compiled, placed.starts, placed.finishes);
}
