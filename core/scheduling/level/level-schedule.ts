import { randomStream } from '../../base';
import { dayOf } from '../../calendar';
import { buildResult } from '../build-result';
import { at } from '../compile/at';
import type { ScheduleProblem } from '../model';
import { placeAll, type Placed } from '../placed';
import type { ScheduleResult } from '../result';
import { prepare, type ScheduleOptions } from '../schedule';
import { LevelState } from './level-state';
import { LEVELLING_OBJECTIVES, type LevellingKind } from './objective';

export interface LevellingOptions extends ScheduleOptions {
  readonly objective: LevellingKind;
  /** What hiring and releasing one unit of each resource costs, against each other; absent: all 1. */
  readonly weights?: Readonly<Record<string, number>>;
  /** The last day by which all must be finished; absent: the finish of the best schedule. */
  readonly finishBy?: string;
  /** How often to start afresh from shaken-up places. */
  readonly rounds?: number;
}

const ROUNDS = 60;
/** Times all activities are settled one after the other in one round, at most. */
const PASSES = 12;

/**
 * Levels the use of resources: the finish stays (or a stated last day is kept), every rule is kept, and crews and
 * cranes are used as evenly, or with as low a peak, or with as little hiring and releasing, as can be found.
 * @returns the levelled schedule; what keeps an activity from being earlier may then be the levelling itself.
 */
export function levelSchedule(problem: ScheduleProblem, options: LevellingOptions): ScheduleResult {
  const prepared = prepare(problem, options);
  if (!prepared.placed) return prepared.failed;
  const { placed, lowerBound, schedules, findings } = prepared;
  const lastMoment =
    options.finishBy === undefined ? placed.finish : dayOf(options.finishBy) - placed.compiled.first + 1;
  if (lastMoment < placed.finish) return { ...buildResult(placed, lowerBound, schedules), findings };
  const levelled = level(placed, lastMoment, options);
  return { ...buildResult(levelled, Math.min(lowerBound, levelled.finish), schedules), findings };
}

/** Settles every activity at its cheapest place, again and again, from several shaken-up schedules. */
function level(placed: Placed, lastMoment: number, options: LevellingOptions): Placed {
  const random = randomStream(options.seed, 'levelling');
  const weights = placed.compiled.problem.resources.map(
    resource => options.weights?.[resource.id] ?? (options.weights ? 0 : 1),
  );
  const state = new LevelState(copy(placed), lastMoment, LEVELLING_OBJECTIVES[options.objective], weights);
  const movable = placed.compiled.problem.activities.flatMap((_, i) =>
    state.options(i).length > 1 ? [i] : [],
  );
  const waiting = placed.compiled.problem.activities.map((_, i) => i);
  let best = { cost: Infinity, starts: placed.starts, finishes: placed.finishes };
  for (let round = 0; round < (options.rounds ?? ROUNDS) && options.shouldStop?.() !== true; round++) {
    if (round > 0) shake(state, round % 2 === 0 ? waiting : movable, random);
    settleAll(state, waiting, random);
    const cost = state.cost();
    if (cost < best.cost)
      best = { cost, starts: state.placed.starts.slice(), finishes: state.placed.finishes.slice() };
    options.onProgress?.({ schedules: round + 1, finish: placed.finish, lowerBound: placed.finish });
  }
  return placeAll(placed.compiled, best.starts, best.finishes);
}

function settleAll(state: LevelState, activities: readonly number[], random: () => number): void {
  for (let pass = 0; pass < PASSES; pass++) {
    const order = shuffled(activities, random);
    const moved = order.filter(activity => state.settle(activity, pass % 2 === 0));
    if (moved.length === 0) return;
  }
}

/** Puts activities, last first, at random among the places they can have. */
function shake(state: LevelState, activities: readonly number[], random: () => number): void {
  for (const activity of shuffled(activities, random)) {
    if (random() < 0.5) continue;
    const starts = state.options(activity);
    state.put(activity, at(starts, Math.floor(random() * starts.length)));
  }
}

function shuffled(list: readonly number[], random: () => number): number[] {
  return list
    .map(entry => ({ entry, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ entry }) => entry);
}

function copy(placed: Placed): Placed {
  return placeAll(placed.compiled, placed.starts, placed.finishes);
}
