import { NONE } from './dice';
import type { DatedNet } from './dated-net';

/**
 * What a pass needs of activities that are placed by counting in work days alone: those that hold units of one packed
 * word at most, on work days only, and may start on any of them.
 */
export interface Quick {
  /** 1 where the activity is of that sort. */
  readonly isQuick: Uint8Array;
  /** Where the table of the activity's calendar begins, and where its work days end in it. */
  readonly base: Int32Array;
  readonly end: Int32Array;
  /** Where the days of the word begin that the activity holds; its units and the guard bits; 0 units: it holds nothing. */
  readonly row: Int32Array;
  readonly units: Int32Array;
  readonly guard: Int32Array;
}

/** Works out the tables of {@link Quick}. */
export function quickOf(net: Omit<DatedNet, 'quick'>): Quick {
  const { count, slots, uses, indexOfDay } = net;
  const isQuick = new Uint8Array(count);
  const base = Int32Array.from(net.calendarOf, calendar => calendar * (slots + 1));
  const row = new Int32Array(count);
  const units = new Int32Array(count);
  const guard = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const use = uses.first[i] ?? NONE;
    const held = (uses.first[i + 1] ?? NONE) - use;
    const isFree = net.nextStart[i] === null && (net.fixed[i] ?? NONE) < 0;
    if (!isFree || held > 1 || (held === 1 && uses.idle[use] !== 0)) continue;
    isQuick[i] = 1;
    if (held === 0) continue;
    const word = uses.word[use] ?? NONE;
    row[i] = word * slots;
    units[i] = uses.work[use] ?? NONE;
    guard[i] = net.guards[word] ?? NONE;
  }
  return { isQuick, base, end: base.map(b => b + (indexOfDay[b + slots] ?? NONE)), row, units, guard };
}

/**
 * Places such an activity from a moment on and takes its units: from the last day back, the latest day that is too full
 * moves the start furthest.
 * @returns the finish; one moment behind the axis when there is no room on it.
 */
export function placeQuickly(
  net: DatedNet,
  free: Int32Array,
  activity: number,
  earliest: number,
  starts: Int32Array,
): number {
  const { quick, indexOfDay, dayOfIndex } = net;
  const base = quick.base[activity] ?? NONE;
  const duration = net.durations[activity] ?? NONE;
  const units = quick.units[activity] ?? NONE;
  if (duration === 0) return (starts[activity] = earliest);
  let known = (base + (indexOfDay[base + Math.min(earliest, net.slots)] ?? NONE)) | 0;
  let to = (known + duration) | 0;
  const end = quick.end[activity] ?? NONE;
  if (units !== 0) {
    const row = quick.row[activity] ?? NONE;
    const guard = quick.guard[activity] ?? NONE;
    for (let k = (to - 1) | 0; k >= known && to <= end; k = (k - 1) | 0) {
      if ((((free[row + (dayOfIndex[k] ?? NONE)] ?? NONE) - units) & guard) !== guard) {
        // The days after k are known to have room.
        known = to;
        to = (k + 1 + duration) | 0;
        k = to;
      }
    }
    if (to <= end) {
      for (let k = (to - duration) | 0; k < to; k = (k + 1) | 0) {
        const slot = row + (dayOfIndex[k] ?? NONE);
        free[slot] = ((free[slot] ?? NONE) - units) | 0;
      }
    }
  }
  if (to > end) {
    starts[activity] = net.slots;
    return net.slots + 1;
  }
  starts[activity] = dayOfIndex[to - duration] ?? NONE;
  return ((dayOfIndex[to - 1] ?? NONE) + 1) | 0;
}
