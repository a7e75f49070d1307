import { isSameData, keeping, type Finding } from '../base';
import type { PlanProblem } from '../estimate';
import {
  schedule,
  scheduleInSteps,
  verifySchedule,
  type ScheduleProblem,
  type ScheduleResult,
} from '../scheduling';

/** A schedule with the problem it was made for. */
export interface Scheduled {
  readonly problem: PlanProblem;
  readonly schedule: ScheduleResult;
}

/** What a schedule may cost. */
export interface Effort {
  readonly schedules: number;
  readonly seed: number;
}

const KEPT: (Scheduled & Effort)[] = [];
const MOST_KEPT = 12;

/**
 * The schedule of a problem. One that says the same as a problem scheduled before, under the same seed and with the same
 * number of schedules, has the same answer: most edits change prices, not work.
 */
export function scheduledOnce(problem: PlanProblem, effort: Effort): Scheduled {
  return keep(known(problem, effort) ?? { problem, ...effort, schedule: schedule(problem, effort) });
}

/** The same in steps; at their end the answer is known. */
export function* scheduledInSteps(
  problem: PlanProblem,
  effort: Effort,
): Generator<undefined, undefined, undefined> {
  if (known(problem, effort) !== undefined) return;
  keep({ problem, ...effort, schedule: yield* scheduleInSteps(problem, effort) });
}

/** The same, but a plan not scheduled before takes the dates of a held schedule, where that has all its activities. */
export function scheduledOrHeld(
  problem: PlanProblem,
  effort: Effort,
  held: ScheduleResult | undefined,
): Scheduled & { readonly datesHeld?: true } {
  const found = known(problem, effort);
  if (found !== undefined) return keep(found);
  if (held === undefined || !hasDatesFor(problem, held)) return scheduledOnce(problem, effort);
  return { problem, schedule: held, datesHeld: true };
}

function hasDatesFor(problem: PlanProblem, held: ScheduleResult): boolean {
  const dated = new Set([...held.activities, ...held.hammocks].map(one => one.id));
  return [...problem.activities, ...problem.hammocks].every(one => dated.has(one.id));
}

function known(problem: PlanProblem, { seed, schedules }: Effort): (Scheduled & Effort) | undefined {
  return KEPT.find(
    one => one.seed === seed && one.schedules === schedules && isSameData(one.problem, problem),
  );
}

function keep(made: Scheduled & Effort): Scheduled {
  const at = KEPT.indexOf(made);
  if (at >= 0) KEPT.splice(at, 1);
  KEPT.unshift(made);
  if (KEPT.length > MOST_KEPT) KEPT.pop();
  return made;
}

/** What a check of a schedule finds, kept with the schedule. */
export const verifiedOnce: (problem: ScheduleProblem, made: ScheduleResult) => readonly Finding[] = keeping(
  MOST_KEPT,
  verifySchedule,
);
