import { NONE } from './dice';
import {
  finishOf,
  FROM_FINISH,
  nextWorkDay,
  shifted,
  startFor,
  TO_FINISH,
  type Arcs,
  type DatedNet,
} from './dated-net';

/** Where a pass puts its schedule. */
export interface Times {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
}

/** The moment before which the relationships do not let the activity start. */
export function heldUntil(net: DatedNet, activity: number, times: Times): number {
  const arcs = net.minimums;
  let earliest = 0;
  for (let arc = arcs.first[activity] ?? NONE, end = arcs.first[activity + 1] ?? NONE; arc < end; arc++) {
    const moment = demandedStart(net, arcs, arc, arcs.other[arc] ?? NONE, activity, times);
    if (moment > earliest) earliest = moment;
  }
  return earliest;
}

/** The start that the lag demands of `to`, given the times of `from`. */
export function demandedStart(
  net: DatedNet,
  arcs: Arcs,
  arc: number,
  from: number,
  to: number,
  times: Times,
): number {
  const joins = arcs.ends[arc] ?? NONE;
  const lagCalendar = arcs.calendar[arc] ?? NONE;
  const days = arcs.lag[arc] ?? NONE;
  let moment = ((joins & FROM_FINISH) !== 0 ? times.finishes[from] : times.starts[from]) ?? NONE;
  moment = lagCalendar < 0 ? moment + days : lagged(net, lagCalendar, moment, days);
  return (joins & TO_FINISH) !== 0 ? startOnCalendar(net, to, moment) : moment;
}

function lagged(net: DatedNet, lagCalendar: number, moment: number, days: number): number {
  const calendar = net.calendars[lagCalendar];
  return calendar ? shifted(calendar, moment, days) : moment;
}

function startOnCalendar(net: DatedNet, activity: number, finish: number): number {
  const calendar = net.calendars[net.calendarOf[activity] ?? NONE];
  const duration = net.durations[activity] ?? NONE;
  return calendar ? startFor(calendar, finish, duration) : finish - duration;
}

/** Starts the activity as early as its calendar, its allowed starts and the free capacities let it. */
export function place(
  net: DatedNet,
  free: Int32Array,
  activity: number,
  earliest: number,
  times: Times,
): void {
  const calendar = net.calendars[net.calendarOf[activity] ?? NONE];
  const next = net.nextStart[activity];
  const duration = net.durations[activity] ?? NONE;
  if (!calendar) return;
  let start = earliest;
  for (;;) {
    if (next) start = next[start] ?? NONE;
    else if (duration > 0) start = nextWorkDay(calendar, start);
    const tooFull = lastFullDay(net, free, activity, start, duration);
    if (tooFull < 0) break;
    start = tooFull + 1;
  }
  times.starts[activity] = start;
  times.finishes[activity] = finishOf(calendar, start, duration);
}

/** The latest day on which the free capacities do not suffice for a start then, -1 when all do. */
function lastFullDay(
  net: DatedNet,
  free: Int32Array,
  activity: number,
  start: number,
  duration: number,
): number {
  const calendar = net.calendars[net.calendarOf[activity] ?? NONE];
  if (!calendar) return -1;
  const { dayOfIndex } = calendar;
  const from = calendar.indexOfDay[start] ?? NONE;
  const { words, guards, workDemands, idleDemands } = net;
  const holdsIdle = net.holdsIdleDays[activity] === 1;
  for (let word = 0; word < words; word++) {
    const guard = guards[word] ?? NONE;
    const demand = workDemands[activity * words + word] ?? NONE;
    if (demand !== 0) {
      for (let k = from + duration - 1; k >= from; k--) {
        const day = dayOfIndex[k] ?? NONE;
        if ((((free[day * words + word] ?? NONE) - demand) & guard) !== guard) return day;
      }
    }
    if (!holdsIdle) continue;
    const idle = idleDemands[activity * words + word] ?? NONE;
    for (let day = (dayOfIndex[from + duration - 1] ?? NONE) - 1; idle !== 0 && day > start; day--) {
      if ((((free[day * words + word] ?? NONE) - idle) & guard) !== guard) return day;
    }
  }
  return -1;
}

/** Takes (`sign` -1) the placed activity's demand off the free capacities, or (`sign` 1) gives it back. */
export function hold(net: DatedNet, free: Int32Array, activity: number, times: Times, sign: number): void {
  const calendar = net.calendars[net.calendarOf[activity] ?? NONE];
  if (!calendar) return;
  const { words, workDemands, idleDemands } = net;
  const { indexOfDay, dayOfIndex } = calendar;
  const start = times.starts[activity] ?? NONE;
  const finish = times.finishes[activity] ?? NONE;
  const from = indexOfDay[start] ?? NONE;
  const to = indexOfDay[finish] ?? NONE;
  const holdsIdle = net.holdsIdleDays[activity] === 1;
  for (let word = 0; word < words; word++) {
    const demand = (workDemands[activity * words + word] ?? NONE) * sign;
    for (let k = from; demand !== 0 && k < to; k++) {
      const slot = (dayOfIndex[k] ?? NONE) * words + word;
      free[slot] = ((free[slot] ?? NONE) + demand) | 0;
    }
    if (!holdsIdle) continue;
    const idle = (idleDemands[activity * words + word] ?? NONE) * sign;
    for (let day = start; idle !== 0 && day < finish; day++) {
      if (indexOfDay[day] !== indexOfDay[day + 1]) continue;
      const slot = day * words + word;
      free[slot] = ((free[slot] ?? NONE) + idle) | 0;
    }
  }
}

/**
 * Places and holds at once, counting in work days of the calendar alone: for one packed word, an activity that
 * lets its resources go on idle days and may start on any work day.
 * @returns false when the activity is not of that sort.
 */
function placeInIndex(
  net: DatedNet,
  free: Int32Array,
  activity: number,
  earliest: number,
  times: Times,
): boolean {
  const calendar = net.calendars[net.calendarOf[activity] ?? NONE];
  const duration = net.durations[activity] ?? NONE;
  if (!calendar || net.words !== 1 || duration === 0) return false;
  if (net.holdsIdleDays[activity] === 1 || net.nextStart[activity]) return false;
  const { dayOfIndex } = calendar;
  const demand = net.workDemands[activity] ?? NONE;
  const guard = net.guards[0] ?? NONE;
  let known = calendar.indexOfDay[earliest] ?? NONE;
  let to = (known + duration) | 0;
  for (let k = (to - 1) | 0; demand !== 0 && k >= known; k = (k - 1) | 0) {
    if ((((free[dayOfIndex[k] ?? NONE] ?? NONE) - demand) & guard) !== guard) {
      known = to;
      to = (k + 1 + duration) | 0;
      k = to;
    }
  }
  for (let k = (to - duration) | 0; demand !== 0 && k < to; k = (k + 1) | 0) {
    const day = dayOfIndex[k] ?? NONE;
    free[day] = ((free[day] ?? NONE) - demand) | 0;
  }
  times.starts[activity] = dayOfIndex[to - duration] ?? NONE;
  times.finishes[activity] = (dayOfIndex[to - 1] ?? NONE) + 1;
  return true;
}

/**
 * Serial schedule generation with calendars, dates, minimum lags and varying capacities.
 * @param floor no start before this moment.
 * @param made its `late` grows by the days that fixed activities start before their relationships let them.
 * @returns the cost, 1 schedule.
 */
export function datedPass(
  net: DatedNet,
  free: Int32Array,
  list: Int32Array,
  floor: number,
  made: Times & { late: number },
): number {
  const { release, fixed } = net;
  for (let k = 0; k < list.length; k++) {
    const activity = list[k] ?? NONE;
    const only = fixed[activity] ?? NONE;
    const held = heldUntil(net, activity, made);
    const earliest = only >= 0 ? only : Math.max(floor, release[activity] ?? NONE, held);
    if (only >= 0) made.late += Math.max(0, held - only);
    if (!placeInIndex(net, free, activity, earliest, made)) {
      place(net, free, activity, earliest, made);
      hold(net, free, activity, made, -1);
    }
  }
  restore(net, free, made);
  return 1;
}

/** Makes the capacities free again over the time of the schedule. */
export function restore(net: DatedNet, free: Int32Array, times: Times): void {
  let low = net.slots;
  let high = 0;
  for (let i = 0; i < net.count; i++) {
    const start = times.starts[i] ?? NONE;
    const finish = times.finishes[i] ?? NONE;
    if (start < low) low = start;
    if (finish > high) high = finish;
  }
  if (low < high) free.set(net.template.subarray(low * net.words, high * net.words), low * net.words);
}
