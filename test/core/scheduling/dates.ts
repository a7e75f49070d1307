import { expect } from 'vitest';
import {
  holdingWords,
  schedule,
  verifySchedule,
  type ScheduleProblem,
  type ScheduleResult,
} from '../../../core/scheduling';

/** Schedules, has the day-by-day check pass, and gives the answer. */
export function solved(problem: ScheduleProblem): ScheduleResult {
  const result = schedule(problem, { schedules: 300, seed: 1 });
  expect(result.findings.filter(finding => finding.weight === 'blocks')).toEqual([]);
  expect(verifySchedule(problem, result)).toEqual([]);
  return result;
}

/** `A 03-01/03-05` for each activity. */
export function dates(problem: ScheduleProblem): string[] {
  return solved(problem).activities.map(a => `${a.id} ${a.start.slice(5)}/${a.finish.slice(5)}`);
}

/** What holds one activity, in words. */
export function held(problem: ScheduleProblem, id: string): string[] {
  return (solved(problem).activities.find(a => a.id === id)?.heldBy ?? []).map(holding =>
    holdingWords(problem, holding),
  );
}

/** The sentences of a problem without a schedule. */
export function conflicts(problem: ScheduleProblem): string[] {
  const result = schedule(problem, { schedules: 300, seed: 1 });
  expect(result.status).toBe('infeasible');
  expect(result.activities).toEqual([]);
  expect(result.finish).toBeUndefined();
  return (result.infeasible ?? []).map(conflict => conflict.sentence);
}
