import { at, BugError } from '../base';
import { compile } from './compile/compile';
import { plannedModes } from './compile/compile-activities';
import type { ScheduleProblem } from './model';
import { TrialDecoder, type SearchProblem } from './search';
import { prepare, type ScheduleOptions } from './schedule';

/** Schedules the plan again with other durations: the crews follow the order of the plan, the days come as they come. */
export interface TrialScheduler {
  /** Activity ids by position. */
  readonly activities: readonly string[];
  /**
   * One trial. Moments count in calendar days from the horizon start; a finish is the end of the last day.
   * @param durations days by activity, rounded up to whole ones.
   * @param notBefore moments before which activities may not start, for those named as gated; 0 without.
   * @returns the last finish.
   */
  decode(
    durations: Float64Array,
    notBefore: Float64Array,
    starts: Float64Array,
    finishes: Float64Array,
  ): number;
}

export interface TrialOptions extends ScheduleOptions {
  /** Activities that trials may hold back, by id; absent: those that need consecutive days. */
  readonly gated?: readonly string[];
}

/** Fractions of a day closer to a whole day than this are rounding. */
const DAY_TOLERANCE = 1e-9;

/**
 * Prepares a problem for many trials: the plan is searched once, every trial is one pass in its order. Deadlines do
 * not hold in trials: missing them is what a simulation counts.
 * @returns undefined when the problem has no schedule.
 */
export function trialScheduler(problem: ScheduleProblem, options: TrialOptions): TrialScheduler | undefined {
  const plan = prepare(problem, options);
  if (!plan.placed) return undefined;
  const free = { ...problem, activities: problem.activities.map(({ deadline: _, ...activity }) => activity) };
  const compiled = compile(free, options.modes ?? plannedModes(problem));
  const named = options.gated ?? problem.activities.flatMap(a => (a.consecutive ? [a.id] : []));
  const gates = named.flatMap(id => compiled.position.get(id) ?? []);
  const gated = withGates(compiled.search, gates);
  const decoder = new TrialDecoder(gated);
  const planned = Int32Array.from(gated.activities, (_, i) => plan.placed.starts[i] ?? 0);
  const list = decoder.listBy(planned);
  const days = Int32Array.from(gated.activities, activity => activity.duration);
  const count = problem.activities.length;
  const firstGate = compiled.search.activities.length;
  return {
    activities: problem.activities.map(activity => activity.id),
    decode(durations, notBefore, starts, finishes) {
      for (let i = 0; i < count; i++) days[i] = wholeDays(at(durations, i));
      gates.forEach((activity, g) => (days[firstGate + g] = wholeDays(at(notBefore, activity))));
      const trial = decoder.decode(list, days);
      for (let i = 0; i < count; i++) {
        starts[i] = at(trial.starts, i);
        finishes[i] = at(trial.finishes, i);
      }
      return trial.finish;
    },
  };
}

/** A gate is a wait from the first day on, as long as the trial says, after which its activity may start. */
function withGates(problem: SearchProblem, gates: readonly number[]): SearchProblem {
  const demands = problem.resources.map(() => 0);
  const count = problem.activities.length;
  return {
    ...problem,
    activities: [...problem.activities, ...gates.map(() => ({ duration: 0, demands, fixedStart: 0 }))],
    relationships: [
      ...problem.relationships,
      ...gates.map((activity, g) => ({ from: count + g, to: activity, kind: 'FS' as const, minimumLag: 0 })),
    ],
  };
}

function wholeDays(days: number): number {
  if (!(days >= 0)) throw new BugError(`a trial with a duration of ${days} days`);
  return Math.ceil(days - DAY_TOLERANCE);
}
