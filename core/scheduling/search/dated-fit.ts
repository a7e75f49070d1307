import { intAt } from '../../base';
import type { DatedNet } from './dated-net';

/**
 * The earliest start from a moment on that the activity's calendar, its allowed starts and the free capacities
 * let it have; the end of the axis when there is none. Each word it holds is scanned from the last day back: the
 * latest day that is too full moves the start furthest.
 */
export function earliestFit(net: DatedNet, free: Int32Array, activity: number, earliest: number): number {
  const next = net.nextStart[activity];
  const start = next ? (next[earliest] ?? net.slots) : Math.min(earliest, net.slots);
  if (net.durations[activity] === 0 || start === net.slots) return start;
  const { uses, slots, indexOfDay, dayOfIndex } = net;
  const base = intAt(net.calendarOf, activity) * (slots + 1);
  let from = intAt(indexOfDay, base + start);
  const first = intAt(uses.first, activity);
  const end = intAt(uses.first, activity + 1);
  for (let use = first, settled = 0; settled < end - first;) {
    const fit =
      next || uses.idle[use] !== 0
        ? fitOverSpan(net, free, activity, use, from)
        : fitOnWorkDays(net, free, activity, use, from);
    if (fit + intAt(net.durations, activity) > intAt(indexOfDay, base + slots)) return slots;
    settled = fit === from ? settled + 1 : 1;
    from = fit;
    use = use + 1 === end ? first : use + 1;
  }
  return intAt(dayOfIndex, base + from);
}

/** The first index of work days at or after `from` from which the activity's work days have room in one word. */
function fitOnWorkDays(net: DatedNet, free: Int32Array, activity: number, use: number, from: number): number {
  const { uses, slots, dayOfIndex } = net;
  const base = (intAt(net.calendarOf, activity) * (slots + 1)) | 0;
  const duration = intAt(net.durations, activity) | 0;
  const word = intAt(uses.word, use);
  const row = (word * slots) | 0;
  const guard = intAt(net.guards, word);
  const demand = intAt(uses.work, use);
  const end = (base + intAt(net.indexOfDay, base + slots)) | 0;
  let known = (base + from) | 0;
  let to = (known + duration) | 0;
  if (to > end) return (end - base) | 0;
  for (let k = (to - 1) | 0; k >= known; k = (k - 1) | 0) {
    if (((intAt(free, row + intAt(dayOfIndex, k)) - demand) & guard) !== guard) {
      // The days after k are known to have room.
      known = to;
      to = (k + 1 + duration) | 0;
      k = to;
      if (to > end) return (end - base) | 0;
    }
  }
  return (to - duration - base) | 0;
}

/** The same for an activity that holds the word on idle days too, or may only start on some days. */
function fitOverSpan(net: DatedNet, free: Int32Array, activity: number, use: number, from: number): number {
  const { slots, dayOfIndex, indexOfDay } = net;
  const base = intAt(net.calendarOf, activity) * (slots + 1);
  const next = net.nextStart[activity];
  const duration = intAt(net.durations, activity);
  const most = intAt(indexOfDay, base + slots);
  for (let fit = from; ;) {
    if (fit + duration > most) return most;
    const first = intAt(dayOfIndex, base + fit);
    const last = intAt(dayOfIndex, base + fit + duration - 1);
    const full = lastFullDay(net, free, base, use, first, last);
    if (full < 0) return fit;
    fit = intAt(indexOfDay, base + (next ? (next[full + 1] ?? slots) : full + 1));
  }
}

/** The latest day of a stretch on which one word has no room, -1 when all have. */
function lastFullDay(
  net: DatedNet,
  free: Int32Array,
  base: number,
  use: number,
  first: number,
  last: number,
): number {
  const { uses, slots, indexOfDay } = net;
  const word = intAt(uses.word, use);
  const row = word * slots;
  const guard = intAt(net.guards, word);
  const work = intAt(uses.work, use);
  const idle = intAt(uses.idle, use);
  for (let day = last; day >= first; day--) {
    const isWork = indexOfDay[base + day] !== indexOfDay[base + day + 1];
    const left = intAt(free, row + day) - (isWork ? work : idle);
    if ((left & guard) !== guard) return day;
  }
  return -1;
}
