import { intAt } from '../../base';
import { axisCalendarOf, besideEachOther, nextStartTable, SharedTables } from './axis';
import { heldOf, type AxisTimes } from './compile-held';
import type { AxisCalendar, DatedNet } from './dated-net';
import { quickOf } from './dated-quick';
import { arcListsOf, orderPairs, type Lag } from './lags';
import { mirroredNet } from './mirror';
import { linksOf } from './plain-net';
import { workDaysOf, type SearchActivity, type SearchProblem, type WorkDays } from './problem';

/**
 * The dated networks of a problem in forward and in reversed time. Its minimum lags must form no loop.
 * @param lags the problem's, as {@link normalised} says them.
 * @param room days of room before and after the problem's days, beyond what its own durations need.
 */
export function datedNetsOf(problem: SearchProblem, lags: readonly Lag[], room = 0): [DatedNet, DatedNet] {
  const forward = forwardNetOf(problem, lags, room);
  return [forward, mirroredNet(forward, lags)];
}

/** The room before and after the problem's days is at most its days over this: no pass of any use needs more. */
const LEAD_SHARE = 2;

function forwardNetOf(problem: SearchProblem, lags: readonly Lag[], room: number): DatedNet {
  const count = problem.activities.length;
  const lead = Math.min(leadOf(problem), Math.ceil(problem.horizon / LEAD_SHARE)) + room;
  const slots = problem.horizon + 2 * lead;
  const tables = besideEachOther(
    [...problem.calendars, everyDay(problem.horizon)].map(days => onAxis(days, lead)),
  );
  const pairs = orderPairs(lags);
  const calendarOf = Int32Array.from(
    problem.activities,
    ({ calendar }) => calendar ?? problem.calendars.length,
  );
  const times = { lead, slots, calendarOf, calendars: tables.calendars };
  const net = {
    count,
    slots,
    base: lead,
    ...tables,
    calendarOf,
    durations: Int32Array.from(problem.activities, activity => activity.duration),
    predecessors: linksOf(
      count,
      pairs.map(([from, to]) => [to, from] as const),
    ),
    successors: linksOf(count, pairs),
    ...arcListsOf(count, lags),
    hasMaximums: lags.some(lag => lag.isMaximum),
    needsRepair: lags.some(lag => lag.kind !== 'FS' || lag.days < 0 || lag.isMaximum),
    nextStart: nextStartsOf(problem, times),
    ...heldOf(problem, times),
    release: Int32Array.from(problem.activities, ({ notBefore }) => lead + (notBefore ?? 0)),
    due: Int32Array.from(
      problem.activities,
      ({ latestFinish }) => lead + Math.min(latestFinish ?? problem.horizon, problem.horizon),
    ),
    after: new Int32Array(count),
    fixed: Int32Array.from(problem.activities, ({ fixedStart }) =>
      fixedStart === undefined ? -1 : lead + fixedStart,
    ),
  };
  return { ...net, quick: quickOf(net) };
}

/** Days that always suffice to place everything one after the other; a pass that needs more than the horizon is no good. */
function leadOf(problem: SearchProblem): number {
  const work = problem.activities.reduce((sum, activity) => sum + activity.duration, 0);
  const lags = problem.relationships.reduce(
    (sum, link) => sum + Math.abs(link.minimumLag ?? 0) + Math.abs(link.maximumLag ?? 0),
    0,
  );
  return work + lags + 2;
}

function everyDay(horizon: number): WorkDays {
  return workDaysOf(new Uint8Array(horizon).fill(1));
}

/** The calendar with `lead` work days before and after it. */
function onAxis(days: WorkDays, lead: number): AxisCalendar {
  const horizon = days.indexOfDay.length - 1;
  const isWork = new Uint8Array(horizon + 2 * lead).fill(1);
  for (let day = 0; day < horizon; day++)
    isWork[lead + day] = days.indexOfDay[day] === days.indexOfDay[day + 1] ? 0 : 1;
  return axisCalendarOf(isWork);
}

function nextStartsOf(problem: SearchProblem, times: AxisTimes): (Int32Array | null)[] {
  const shared = new SharedTables();
  return problem.activities.map((activity, i) => {
    const key = `${activity.duration === 0} ${intAt(times.calendarOf, i)}`;
    const { startAllowed } = activity;
    return startAllowed
      ? shared.get(startAllowed, key, () => nextStartOf(startAllowed, activity, i, times))
      : null;
  });
}

function nextStartOf(allowed: Uint8Array, activity: SearchActivity, i: number, times: AxisTimes): Int32Array {
  const calendar = times.calendars[intAt(times.calendarOf, i)];
  return nextStartTable(times.slots, day => {
    const isInside = day >= times.lead && day < times.slots - times.lead;
    if (isInside && allowed[day - times.lead] !== 1) return false;
    return !calendar || activity.duration === 0 || calendar.indexOfDay[day] !== calendar.indexOfDay[day + 1];
  });
}
