import type { Finding } from '../base';
import { schedule, verifySchedule, type ScheduleProblem, type ScheduleResult } from '../scheduling';
import { isSameData, keeping } from './keeping';

/** A schedule with the problem it was made for. */
export interface Scheduled {
  readonly problem: ScheduleProblem;
  readonly schedule: ScheduleResult;
}

interface Effort {
  readonly schedules: number;
  readonly seed: number;
}

const KEPT: (Scheduled & Effort)[] = [];
const MOST_KEPT = 12;

/**
 * The schedule of a problem. One that says the same as a problem scheduled before, under the same seed and with the same
 * number of schedules, has the same answer: most edits change prices, not work.
 */
export function scheduledOnce(problem: ScheduleProblem, effort: Effort): Scheduled {
  const at = KEPT.findIndex(
    one => one.seed === effort.seed && one.schedules === effort.schedules && isSameData(one.problem, problem),
  );
  const [found] = at < 0 ? [] : KEPT.splice(at, 1);
  const made = found ?? { problem, ...effort, schedule: schedule(problem, effort) };
  KEPT.unshift(made);
  if (KEPT.length > MOST_KEPT) KEPT.pop();
  return made;
}

/** What a check of a schedule finds, kept with the schedule. */
export const verifiedOnce: (problem: ScheduleProblem, made: ScheduleResult) => readonly Finding[] = keeping(
  MOST_KEPT,
  verifySchedule,
);
