import { NONE } from './dice';
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
  const base = (net.calendarOf[activity] ?? NONE) * (slots + 1);
  let from = indexOfDay[base + start] ?? NONE;
  const first = uses.first[activity] ?? NONE;
  const end = uses.first[activity + 1] ?? NONE;
  for (let use = first, settled = 0; settled < end - first;) {
    const fit =
      next || uses.idle[use] !== 0
        ? fitOverSpan(net, free, activity, use, from)
        : fitOnWorkDays(net, free, activity, use, from);
    if (fit + (net.durations[activity] ?? NONE) > (indexOfDay[base + slots] ?? NONE)) return slots;
    settled = fit === from ? settled + 1 : 1;
    from = fit;
    use = use + 1 === end ? first : use + 1;
  }
  return dayOfIndex[base + from] ?? NONE;
}

/** The first index of work days at or after `from` from which the activity's work days have room in one word. */
function fitOnWorkDays(net: DatedNet, free: Int32Array, activity: number, use: number, from: number): number {
  const { uses, slots, dayOfIndex } = net;
  const base = ((net.calendarOf[activity] ?? NONE) * (slots + 1)) | 0;
  const duration = (net.durations[activity] ?? NONE) | 0;
  const word = uses.word[use] ?? NONE;
  const row = (word * slots) | 0;
  const guard = net.guards[word] ?? NONE;
  const demand = uses.work[use] ?? NONE;
  const end = (base + (net.indexOfDay[base + slots] ?? NONE)) | 0;
  let known = (base + from) | 0;
  let to = (known + duration) | 0;
  for (let k = (to - 1) | 0; k >= known; k = (k - 1) | 0) {
    if ((((free[row + (dayOfIndex[k] ?? NONE)] ?? NONE) - demand) & guard) !== guard) {
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
  const base = (net.calendarOf[activity] ?? NONE) * (slots + 1);
  const next = net.nextStart[activity];
  const duration = net.durations[activity] ?? NONE;
  const most = indexOfDay[base + slots] ?? NONE;
  for (let fit = from; ;) {
    if (fit + duration > most) return most;
    const first = dayOfIndex[base + fit] ?? NONE;
    const last = dayOfIndex[base + fit + duration - 1] ?? NONE;
    const full = lastFullDay(net, free, base, use, first, last);
    if (full < 0) return fit;
    fit = indexOfDay[base + (next ? (next[full + 1] ?? slots) : full + 1)] ?? NONE;
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
  const word = uses.word[use] ?? NONE;
  const row = word * slots;
  const guard = net.guards[word] ?? NONE;
  const work = uses.work[use] ?? NONE;
  const idle = uses.idle[use] ?? NONE;
  for (let day = last; day >= first; day--) {
    const isWork = indexOfDay[base + day] !== indexOfDay[base + day + 1];
    const left = (free[row + day] ?? NONE) - (isWork ? work : idle);
    if ((left & guard) !== guard) return day;
  }
  return -1;
}
