import { at } from '../base';
import type { SearchProblem, SearchRelationship, WorkDays } from './search';

/** A moment no schedule of the horizon has: later than all, or earlier than all. */
export const NEVER = 1 << 29;

/** The finish moment of an activity that starts at a work day; {@link NEVER} beyond the horizon. */
export function finishFrom(problem: SearchProblem, activity: number, start: number): number {
  const { duration, calendar } = at(problem.activities, activity);
  if (calendar === undefined || duration === 0)
    return start + duration <= problem.horizon ? start + duration : NEVER;
  const { indexOfDay, dayOfIndex } = at(problem.calendars, calendar);
  const last = dayOfIndex[at(indexOfDay, start) + duration - 1];
  return last === undefined ? NEVER : last + 1;
}

/** The first moment at or after `moment` at which an activity may start by its own rules; {@link NEVER} if none. */
export function nextStart(problem: SearchProblem, activity: number, moment: number): number {
  const { duration, calendar, startAllowed, fixedStart } = at(problem.activities, activity);
  if (fixedStart !== undefined) return fixedStart;
  let start = Math.max(0, moment);
  if (calendar !== undefined && duration > 0) start = nextWorkDay(at(problem.calendars, calendar), start);
  if (startAllowed) while (start < problem.horizon && startAllowed[start] !== 1) start++;
  return start < problem.horizon ? start : NEVER;
}

/** The last moment at or before `moment` at which an activity may start by its own rules; -1 if none. */
export function previousStart(problem: SearchProblem, activity: number, moment: number): number {
  const { duration, calendar, startAllowed, fixedStart } = at(problem.activities, activity);
  if (fixedStart !== undefined) return fixedStart;
  let start = Math.min(moment, problem.horizon - 1);
  if (calendar !== undefined && duration > 0) start = previousWorkDay(at(problem.calendars, calendar), start);
  if (startAllowed) while (start >= 0 && startAllowed[start] !== 1) start--;
  return start;
}

/** The last start from which an activity finishes by a moment; -1 if none. */
export function latestStart(problem: SearchProblem, activity: number, finish: number): number {
  const { duration, calendar } = at(problem.activities, activity);
  if (finish < 0) return -1;
  let start = Math.min(finish, problem.horizon) - duration;
  if (calendar !== undefined && duration > 0) {
    const { indexOfDay, dayOfIndex } = at(problem.calendars, calendar);
    start = dayOfIndex[at(indexOfDay, Math.min(finish, problem.horizon)) - duration] ?? -1;
  }
  return previousStart(problem, activity, start);
}

/** The first start from which an activity does not finish before a moment. */
export function startForFinish(problem: SearchProblem, activity: number, finish: number): number {
  const { duration, calendar } = at(problem.activities, activity);
  if (finish <= 0) return 0;
  if (finish > problem.horizon) return NEVER;
  if (calendar === undefined || duration === 0) return Math.max(0, finish - duration);
  const { indexOfDay, dayOfIndex } = at(problem.calendars, calendar);
  const index = at(indexOfDay, finish);
  // A finish inside idle days is reached only with the next work day.
  const lastIndex = index > 0 && at(dayOfIndex, index - 1) === finish - 1 ? index - 1 : index;
  return dayOfIndex[Math.max(0, lastIndex - duration + 1)] ?? NEVER;
}

/** The first moment of `to` that keeps the least lag after a moment of `from`. */
export function leastMoment(problem: SearchProblem, relationship: SearchRelationship, from: number): number {
  const { minimumLag, calendar } = relationship;
  if (minimumLag === undefined) return 0;
  if (minimumLag === 0 || calendar === undefined) return from + minimumLag;
  const { indexOfDay, dayOfIndex } = at(problem.calendars, calendar);
  const index = at(indexOfDay, from) + minimumLag - 1;
  return index < 0 ? 0 : index >= dayOfIndex.length ? NEVER : at(dayOfIndex, index) + 1;
}

/** The last moment of `to` that keeps the most lag after a moment of `from`. */
export function mostMoment(problem: SearchProblem, relationship: SearchRelationship, from: number): number {
  const { maximumLag, calendar } = relationship;
  if (maximumLag === undefined) return NEVER;
  return lastMomentWithin(problem, calendar, from, maximumLag);
}

/** The last moment of `from` that keeps the least lag before a moment of `to`. */
export function lastMomentBefore(
  problem: SearchProblem,
  relationship: SearchRelationship,
  to: number,
): number {
  const { minimumLag, calendar } = relationship;
  return minimumLag === undefined ? NEVER : lastMomentWithin(problem, calendar, to, -minimumLag);
}

/** The last moment with at most `lag` more (work) days before it than a moment has. */
function lastMomentWithin(
  problem: SearchProblem,
  calendar: number | undefined,
  moment: number,
  lag: number,
): number {
  if (lag === 0 || calendar === undefined) return moment + lag;
  const { indexOfDay, dayOfIndex } = at(problem.calendars, calendar);
  const index = at(indexOfDay, moment) + lag;
  return index < 0 ? -1 : (dayOfIndex[index] ?? problem.horizon);
}

/** The first moment of `from` that keeps the most lag before a moment of `to`; 0 without a most lag. */
export function firstMomentBefore(
  problem: SearchProblem,
  relationship: SearchRelationship,
  to: number,
): number {
  const { maximumLag, calendar } = relationship;
  if (maximumLag === undefined) return 0;
  return leastMoment(
    problem,
    { ...relationship, minimumLag: -maximumLag, ...(calendar === undefined ? {} : { calendar }) },
    to,
  );
}

function nextWorkDay({ indexOfDay, dayOfIndex }: WorkDays, day: number): number {
  return dayOfIndex[indexOfDay[day] ?? dayOfIndex.length] ?? NEVER;
}

function previousWorkDay({ indexOfDay, dayOfIndex }: WorkDays, day: number): number {
  return day < 0 ? -1 : (dayOfIndex[at(indexOfDay, day + 1) - 1] ?? -1);
}
