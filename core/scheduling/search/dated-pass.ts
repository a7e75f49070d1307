import { NONE } from './dice';
import { finishOf, FROM_FINISH, shifted, startFor, TO_FINISH, type Arcs, type DatedNet } from './dated-net';
import { earliestFit } from './dated-fit';
import { placeQuickly } from './dated-quick';

/** Where a pass puts its schedule. */
export interface Times {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
}

/** The moment before which the relationships do not let the activity start. */
export function heldUntil(net: DatedNet, activity: number, times: Times): number {
  const { waits, lagged } = net;
  const { finishes } = times;
  let earliest = 0;
  for (let p = waits.first[activity] ?? NONE, end = waits.first[activity + 1] ?? NONE; p < end; p++) {
    const moment = ((finishes[waits.other[p] ?? NONE] ?? NONE) + (waits.lag[p] ?? NONE)) | 0;
    if (moment > earliest) earliest = moment;
  }
  for (let arc = lagged.first[activity] ?? NONE, end = lagged.first[activity + 1] ?? NONE; arc < end; arc++) {
    const moment = demandedStart(net, lagged, arc, lagged.other[arc] ?? NONE, activity, times);
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
  if (!calendar) return;
  const start = earliestFit(net, free, activity, earliest);
  times.starts[activity] = start;
  times.finishes[activity] = finishOf(calendar, start, net.durations[activity] ?? NONE);
}

/** Takes (`sign` -1) the placed activity's demand off the free capacities, or (`sign` 1) gives it back. */
export function hold(net: DatedNet, free: Int32Array, activity: number, times: Times, sign: number): void {
  const start = times.starts[activity] ?? NONE;
  const finish = times.finishes[activity] ?? NONE;
  holdFor(net, free, activity, start, finish, sign);
}

/** The same between two moments. */
export function holdFor(
  net: DatedNet,
  free: Int32Array,
  activity: number,
  start: number,
  finish: number,
  sign: number,
): void {
  const { uses, indexOfDay, dayOfIndex, slots } = net;
  const base = (net.calendarOf[activity] ?? NONE) * (slots + 1);
  const from = base + (indexOfDay[base + start] ?? NONE);
  const to = base + (indexOfDay[base + finish] ?? NONE);
  for (let use = uses.first[activity] ?? NONE, end = uses.first[activity + 1] ?? NONE; use < end; use++) {
    const row = (uses.word[use] ?? NONE) * slots;
    const demand = (uses.work[use] ?? NONE) * sign;
    for (let k = from; k < to; k++) {
      const slot = row + (dayOfIndex[k] ?? NONE);
      free[slot] = ((free[slot] ?? NONE) + demand) | 0;
    }
    const idle = (uses.idle[use] ?? NONE) * sign;
    for (let day = start; idle !== 0 && day < finish; day++) {
      if (indexOfDay[base + day] !== indexOfDay[base + day + 1]) continue;
      free[row + day] = ((free[row + day] ?? NONE) + idle) | 0;
    }
  }
}

/**
 * Serial schedule generation with calendars, dates, minimum lags and varying capacities.
 * @param free what is left of the capacities; taken, and left so: {@link restore} makes it whole again.
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
  const { release, fixed, quick } = net;
  for (let k = 0; k < list.length; k++) {
    const activity = list[k] ?? NONE;
    if ((quick.words[activity] ?? NONE) >= 0) {
      const earliest = Math.max(floor, release[activity] ?? NONE, heldUntil(net, activity, made)) | 0;
      made.finishes[activity] = placeQuickly(net, free, activity, earliest, made.starts);
      continue;
    }
    const only = fixed[activity] ?? NONE;
    const held = heldUntil(net, activity, made);
    const earliest = only >= 0 ? only : Math.max(floor, release[activity] ?? NONE, held);
    if (only >= 0) made.late += Math.max(0, held - only);
    place(net, free, activity, earliest, made);
    hold(net, free, activity, made, -1);
  }
  return 1;
}

/** Makes the capacities free again between two moments. */
export function restore(net: DatedNet, free: Int32Array, low: number, high: number): void {
  const { slots, words, template } = net;
  const end = Math.min(high, slots);
  for (let row = 0; low < end && row < words * slots; row += slots) {
    free.set(template.subarray(row + low, row + end), row + low);
  }
}
