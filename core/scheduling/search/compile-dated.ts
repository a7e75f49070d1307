import { axisCalendarOf, nextStartTable, SharedTables } from './axis';
import { coveringCliques } from './cliques';
import type { AxisCalendar, DatedNet } from './dated-net';
import { arcListsOf, normalised, orderPairs } from './lags';
import { layLanes, packUnits, type Lanes } from './lanes';
import { mirroredNet } from './mirror';
import { linksOf } from './plain-net';
import type { SearchActivity, SearchProblem, SearchResource, WorkDays } from './problem';

/**
 * The dated networks of a problem in forward and in reversed time. Its minimum lags must form no loop.
 * @param room days of room before and after the problem's days, beyond what its own durations need.
 */
export function datedNetsOf(problem: SearchProblem, room = 0): [DatedNet, DatedNet] {
  const forward = forwardNetOf(problem, room);
  return [forward, mirroredNet(forward, normalised(problem))];
}

function forwardNetOf(problem: SearchProblem, room: number): DatedNet {
  const count = problem.activities.length;
  const lead = leadOf(problem) + room;
  const slots = problem.horizon + 2 * lead;
  const calendars = [...problem.calendars, everyDay(problem.horizon)].map(days => onAxis(days, lead));
  const lags = normalised(problem);
  const pairs = orderPairs(lags);
  const calendarOf = Int32Array.from(
    problem.activities,
    ({ calendar }) => calendar ?? problem.calendars.length,
  );
  const times = { lead, slots, calendarOf, calendars };
  return {
    count,
    slots,
    base: lead,
    calendars,
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
    ...capacitiesOf(problem, times),
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
}

interface AxisTimes {
  readonly lead: number;
  readonly slots: number;
  readonly calendarOf: Int32Array;
  readonly calendars: readonly AxisCalendar[];
}

/** Days that always suffice to place everything one after the other. */
function leadOf(problem: SearchProblem): number {
  const work = problem.activities.reduce((sum, activity) => sum + activity.duration, 0);
  const lags = problem.relationships.reduce(
    (sum, link) => sum + Math.abs(link.minimumLag ?? 0) + Math.abs(link.maximumLag ?? 0),
    0,
  );
  return work + lags + 2;
}

function everyDay(horizon: number): WorkDays {
  const dayOfIndex = Int32Array.from({ length: horizon }, (_, day) => day);
  return { dayOfIndex, indexOfDay: Int32Array.from({ length: horizon + 1 }, (_, day) => day) };
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
    const key = `${activity.duration === 0} ${times.calendarOf[i] ?? 0}`;
    const { startAllowed } = activity;
    return startAllowed
      ? shared.get(startAllowed, key, () => nextStartOf(startAllowed, activity, i, times))
      : null;
  });
}

function nextStartOf(allowed: Uint8Array, activity: SearchActivity, i: number, times: AxisTimes): Int32Array {
  const calendar = times.calendars[times.calendarOf[i] ?? 0];
  return nextStartTable(times.slots, day => {
    const isInside = day >= times.lead && day < times.slots - times.lead;
    if (isInside && allowed[day - times.lead] !== 1) return false;
    return !calendar || activity.duration === 0 || calendar.indexOfDay[day] !== calendar.indexOfDay[day + 1];
  });
}

/** Resources and, for exclusions, single-unit resources that only one of a group can hold. */
function capacitiesOf(problem: SearchProblem, times: AxisTimes) {
  const groups = coveringCliques(problem.activities.length, problem.exclusions);
  const peaks = [...problem.resources.map(peakOf), ...groups.map(() => 1)];
  const holdsIdle = [
    ...problem.resources.map(resource => resource.isHeldOnIdleDays === true),
    ...groups.map(() => true),
  ];
  const lanes = layLanes(peaks);
  const count = problem.activities.length;
  const workDemands = new Int32Array(count * lanes.words);
  const idleDemands = new Int32Array(count * lanes.words);
  const free = freeUnits(problem, peaks);
  problem.activities.forEach((activity, i) => {
    const units = [...activity.demands, ...groups.map(group => (group.has(i) ? 1 : 0))];
    const idle = units.map((unit, r) => (holdsIdle[r] === true ? unit : 0));
    if (activity.fixedStart !== undefined) takeFixed(free, activity, i, units, idle, times);
    else {
      workDemands.set(packUnits(lanes, units), i * lanes.words);
      idleDemands.set(packUnits(lanes, idle), i * lanes.words);
    }
  });
  const template = templateOf(lanes, times, peaks, free);
  const holdsIdleDays = Uint8Array.from({ length: count }, (_, i) =>
    idleDemands.subarray(i * lanes.words, (i + 1) * lanes.words).some(word => word !== 0) ? 1 : 0,
  );
  const shares = (activity: SearchActivity): number =>
    activity.demands.reduce((sum, units, r) => sum + units / Math.max(1, peaks[r] ?? 1), 0);
  const weights = Float64Array.from(
    problem.activities,
    a => shares(a) / Math.max(1, problem.resources.length),
  );
  return {
    words: lanes.words,
    guards: lanes.guards,
    workDemands,
    idleDemands,
    holdsIdleDays,
    template,
    weights,
  };
}

/** The most units of the resource on any day. */
export function peakOf(resource: SearchResource): number {
  return Math.max(
    0,
    resource.capacityByDay
      ? Array.from(resource.capacityByDay).reduce((a, b) => Math.max(a, b), 0)
      : resource.capacity,
  );
}

/** Units of each resource on each day of the problem. */
function freeUnits(problem: SearchProblem, peaks: readonly number[]): number[][] {
  return Array.from({ length: problem.horizon }, (_, day) =>
    peaks.map((peak, r) => problem.resources[r]?.capacityByDay?.[day] ?? peak),
  );
}

/** The packed units of every day of the axis; outside the problem's days every capacity is at its largest. */
function templateOf(
  lanes: Lanes,
  times: AxisTimes,
  peaks: readonly number[],
  free: readonly number[][],
): Int32Array {
  const { words, guards } = lanes;
  const packed = (units: readonly number[]): Int32Array =>
    packUnits(
      lanes,
      units.map(unit => Math.max(0, unit)),
    ).map((word, w) => word | (guards[w] ?? 0));
  const template = new Int32Array(times.slots * words);
  const most = packed(peaks);
  for (let slot = 0; slot < template.length; slot++) template[slot] = most[slot % words] ?? 0;
  free.forEach((units, day) => {
    template.set(packed(units), (times.lead + day) * words);
  });
  return template;
}

function takeFixed(
  free: number[][],
  activity: SearchActivity,
  i: number,
  units: readonly number[],
  idle: readonly number[],
  times: AxisTimes,
): void {
  const calendar = times.calendars[times.calendarOf[i] ?? 0];
  if (!calendar || activity.fixedStart === undefined) return;
  let left = activity.duration;
  for (let day = activity.fixedStart; left > 0 && day < free.length; day++) {
    const slot = times.lead + day;
    const isWork = calendar.indexOfDay[slot] !== calendar.indexOfDay[slot + 1];
    const taken = isWork ? units : idle;
    free[day]?.forEach((unit, r, today) => (today[r] = unit - (taken[r] ?? 0)));
    if (isWork) left--;
  }
}
