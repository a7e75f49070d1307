import { at, intAt } from '../../base';
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
  for (let p = intAt(waits.first, activity), end = intAt(waits.first, activity + 1); p < end; p++) {
    const moment = (intAt(finishes, intAt(waits.other, p)) + intAt(waits.lag, p)) | 0;
    if (moment > earliest) earliest = moment;
  }
  for (let arc = intAt(lagged.first, activity), end = intAt(lagged.first, activity + 1); arc < end; arc++) {
    const moment = demandedStart(net, lagged, arc, intAt(lagged.other, arc), activity, times);
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
  const joins = intAt(arcs.ends, arc);
  const lagCalendar = intAt(arcs.calendar, arc);
  const days = intAt(arcs.lag, arc);
  let moment = ((joins & FROM_FINISH) !== 0 ? times.finishes[from] : times.starts[from]) ?? NONE;
  moment = lagCalendar < 0 ? moment + days : lagged(net, lagCalendar, moment, days);
  return (joins & TO_FINISH) !== 0 ? startOnCalendar(net, to, moment) : moment;
}

function lagged(net: DatedNet, lagCalendar: number, moment: number, days: number): number {
  const calendar = net.calendars[lagCalendar];
  return calendar ? shifted(calendar, moment, days) : moment;
}

function startOnCalendar(net: DatedNet, activity: number, finish: number): number {
  const calendar = net.calendars[intAt(net.calendarOf, activity)];
  const duration = intAt(net.durations, activity);
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
  const calendar = net.calendars[intAt(net.calendarOf, activity)];
  if (!calendar) return;
  const start = earliestFit(net, free, activity, earliest);
  times.starts[activity] = start;
  times.finishes[activity] = finishOf(calendar, start, intAt(net.durations, activity));
}

/** Takes (`sign` -1) the placed activity's demand off the free capacities, or (`sign` 1) gives it back. */
export function hold(net: DatedNet, free: Int32Array, activity: number, times: Times, sign: number): void {
  const start = intAt(times.starts, activity);
  const finish = intAt(times.finishes, activity);
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
  // What found no room stands at the end of the axis and holds nothing.
  if (start >= slots) return;
  const base = intAt(net.calendarOf, activity) * (slots + 1);
  const from = base + intAt(indexOfDay, base + start);
  const to = base + intAt(indexOfDay, base + finish);
  for (let use = intAt(uses.first, activity), end = intAt(uses.first, activity + 1); use < end; use++) {
    const row = intAt(uses.word, use) * slots;
    const demand = intAt(uses.work, use) * sign;
    for (let k = from; k < to; k++) {
      const slot = row + intAt(dayOfIndex, k);
      free[slot] = (intAt(free, slot) + demand) | 0;
    }
    const idle = intAt(uses.idle, use) * sign;
    for (let day = start; idle !== 0 && day < finish; day++) {
      if (indexOfDay[base + day] !== indexOfDay[base + day + 1]) continue;
      free[row + day] = (intAt(free, row + day) + idle) | 0;
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
    const activity = intAt(list, k);
    if (at(quick.words, activity) >= 0) {
      const earliest = Math.max(floor, intAt(release, activity), heldUntil(net, activity, made)) | 0;
      made.finishes[activity] = placeQuickly(net, free, activity, earliest, made.starts);
      continue;
    }
    const only = intAt(fixed, activity);
    const held = heldUntil(net, activity, made);
    const earliest = only >= 0 ? only : Math.max(floor, intAt(release, activity), held);
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
