import { anyBlocks, at } from '../../base';
import { isoOf } from '../../calendar';
import { buildResult } from '../build-result';
import { checkProblem } from '../check/check-problem';
import { compile } from '../compile/compile';
import { crewOf, plannedModes } from '../compile/compile-activities';
import type { ScheduleProblem } from '../model';
import { place, type ScheduleOptions } from '../schedule';

export interface FasterPlansOptions extends ScheduleOptions {
  /** What it costs more to do an activity with another crew, dollars; below zero: less. */
  readonly extraCost: (activity: number, from: number, to: number) => number;
}

/** A plan that finishes earlier than all before it. */
export interface FasterPlan {
  /** Position in `modes` by activity, in the order of the problem. */
  readonly modes: readonly number[];
  /** Last day worked. */
  readonly finish: string;
}

/**
 * Plans that finish earlier and earlier, beginning with the planned crews: each step gives a larger crew to the activity
 * of those that hold the finish where a day gained costs least; where no single one gains a day, to all of them.
 * @returns undefined after each schedule tried, so that the caller can tell how far it is or stop, and each plan found.
 * @source the time-cost trade-off by cost slopes, J. E. Kelley, Operations Research 9 (1961) 296-320 (from memory); here
 * with resources and calendars, so that it is a rule of thumb and not exact.
 */
export function* fasterPlans(
  problem: ScheduleProblem,
  options: FasterPlansOptions,
): Generator<FasterPlan | undefined, void> {
  if (anyBlocks(checkProblem(problem))) return;
  const timed = (modes: readonly number[]) => place(compile(problem, modes), options).placed;
  let modes: readonly number[] = plannedModes(problem);
  let now = timed(modes);
  if (now === undefined) return;
  yield { modes, finish: isoOf(now.compiled.first + now.finish - 1) };
  for (;;) {
    const larger: Step[] = buildResult(now, 0, 0).activities.flatMap(({ critical }, i) => {
      const mode = critical ? nextLarger(problem, i, at(modes, i)) : undefined;
      return mode === undefined ? [] : [{ activity: i, mode }];
    });
    let best: { modes: number[]; slope: number } | undefined;
    for (const { activity, mode } of larger) {
      const tried = modes.with(activity, mode);
      const gained = now.finish - (timed(tried)?.finish ?? Infinity);
      const slope = options.extraCost(activity, at(modes, activity), mode) / gained;
      if (gained > 0 && (best === undefined || slope < best.slope)) best = { modes: tried, slope };
      yield undefined;
    }
    const next: readonly number[] = best?.modes ?? withAll(modes, larger);
    const then = timed(next);
    if (then === undefined || then.finish >= now.finish) return;
    [modes, now] = [next, then];
    yield { modes, finish: isoOf(now.compiled.first + now.finish - 1) };
  }
}

/** An activity that may have a larger crew. */
interface Step {
  readonly activity: number;
  readonly mode: number;
}

function withAll(modes: readonly number[], larger: readonly Step[]): number[] {
  const all = modes.slice();
  for (const { activity, mode } of larger) all[activity] = mode;
  return all;
}

/** The mode with the next larger crew that takes fewer days. */
function nextLarger(problem: ScheduleProblem, activity: number, now: number): number | undefined {
  const given = at(problem.activities, activity);
  const { crewSize, workDays } = crewOf(given, now);
  let next: number | undefined;
  (given.modes ?? []).forEach((mode, i) => {
    if (mode.crewSize <= crewSize || mode.workDays >= workDays) return;
    if (next === undefined || mode.crewSize < crewOf(given, next).crewSize) next = i;
  });
  return next;
}
