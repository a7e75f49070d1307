import { dayOf } from '../../calendar';
import type { CrewMode, ScheduleActivity, ScheduleProblem } from '../model';
import type { SearchActivity } from '../search';
import type { CompiledActivity } from './compiled';
import type { DayTables, OpenDays } from './day-tables';
import { actualMoments } from './progress';

/** The crew that does an activity: one of its modes, or its fixed duration. */
export function crewOf(activity: ScheduleActivity, mode: number): CrewMode {
  return (
    activity.modes?.[mode] ?? {
      crewSize: activity.crewSize ?? 0,
      workDays: activity.workDays ?? 0,
      uses: activity.uses ?? {},
    }
  );
}

/** The mode an activity is planned with. */
export function plannedModes(problem: ScheduleProblem): number[] {
  return problem.activities.map(activity => activity.plannedMode ?? 0);
}

/** Days the plan keeps for an activity: its own and its weather allowance. */
export function reservedDays(activity: ScheduleActivity, crew: CrewMode): number {
  return crew.workDays + (activity.consecutive?.weatherDays ?? 0);
}

/** Days left of work begun: as stated, or else what is planned less the days that have gone; at least 1. */
function remainingDays(
  activity: ScheduleActivity,
  compiled: CompiledActivity,
  start: number,
  statusSlot: number,
): number {
  if (activity.remaining !== undefined) return activity.remaining;
  let gone = 0;
  for (let day = Math.max(0, start); day < statusSlot; day++) gone += compiled.open.flags[day] ?? 0;
  return Math.max(1, reservedDays(activity, compiled.crew) - gone);
}

/** One activity in packed form. */
export function packActivity(
  activity: ScheduleActivity,
  compiled: CompiledActivity,
  demands: readonly number[],
  tables: DayTables,
  statusSlot: number,
): SearchActivity {
  const actual = actualMoments(activity, tables.first);
  if (actual?.finish !== undefined) return finishedWork(actual.start, actual.finish, compiled, demands);
  const limits = limitsOf(activity, compiled, tables.first, statusSlot);
  const duration = actual
    ? remainingDays(activity, compiled, actual.start, statusSlot)
    : reservedDays(activity, compiled.crew);
  if (compiled.isMilestone) {
    return {
      duration: 0,
      demands,
      ...limits,
      startAllowed: tables.milestoneMoments(compiled.open, compiled.isClosing),
    };
  }
  if (activity.consecutive)
    return { duration, demands, ...limits, startAllowed: tables.runStarts(compiled.open, duration) };
  return { duration, demands, ...limits, ...calendarOf(compiled.open) };
}

function finishedWork(
  start: number,
  finish: number,
  compiled: CompiledActivity,
  demands: readonly number[],
): SearchActivity {
  const none = demands.map(() => 0);
  if (!compiled.isMilestone) return { duration: finish - start, demands: none, fixedStart: start };
  return { duration: 0, demands: none, fixedStart: compiled.isClosing ? finish : start };
}

function limitsOf(
  activity: ScheduleActivity,
  compiled: CompiledActivity,
  first: number,
  statusSlot: number,
): { notBefore: number; latestFinish?: number } {
  const closing = compiled.isClosing ? 1 : 0;
  const asked =
    activity.notBefore === undefined || compiled.state === 'begun' ? 0 : dayOf(activity.notBefore) - first;
  const notBefore = Math.max(0, asked, statusSlot) + closing;
  if (activity.deadline === undefined) return { notBefore };
  const opening = compiled.isMilestone && !compiled.isClosing;
  return { notBefore, latestFinish: dayOf(activity.deadline) - first + (opening ? 0 : 1) };
}

function calendarOf(open: OpenDays): { calendar?: number } {
  return open.position === undefined ? {} : { calendar: open.position };
}
