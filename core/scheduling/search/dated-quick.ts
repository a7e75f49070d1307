import { at, intAt } from '../../base';
import type { DatedNet } from './dated-net';

/**
 * What a pass needs of activities that are placed by counting in work days alone: those that hold units on work days
 * only and may start on any of them.
 */
export interface Quick {
  /** How many packed words the activity holds units of, at most {@link MANY}; -1 where it is not of that sort. */
  readonly words: Int8Array;
  /** Where the table of the activity's calendar begins, and where its work days end in it. */
  readonly base: Int32Array;
  readonly end: Int32Array;
  /** Of its first word: where its days begin, the units it holds, the guard bits. */
  readonly row: Int32Array;
  readonly units: Int32Array;
  readonly guard: Int32Array;
}

/** Two words and more are treated alike. */
const MANY = 2;

/** Works out the tables of {@link Quick}. */
export function quickOf(net: Omit<DatedNet, 'quick'>): Quick {
  const { count, slots, uses, indexOfDay } = net;
  const words = new Int8Array(count).fill(-1);
  const base = Int32Array.from(net.calendarOf, calendar => calendar * (slots + 1));
  const row = new Int32Array(count);
  const units = new Int32Array(count);
  const guard = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const use = intAt(uses.first, i);
    const held = intAt(uses.first, i + 1) - use;
    const isFree = net.nextStart[i] === null && intAt(net.fixed, i) < 0;
    if (!isFree || uses.idle.subarray(use, use + held).some(idle => idle !== 0)) continue;
    words[i] = Math.min(held, MANY);
    if (held === 0) continue;
    const word = intAt(uses.word, use);
    row[i] = word * slots;
    units[i] = intAt(uses.work, use);
    guard[i] = intAt(net.guards, word);
  }
  return { words, base, end: base.map(b => b + intAt(indexOfDay, b + slots)), row, units, guard };
}

/**
 * Places such an activity from a moment on and takes its units.
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
  const base = intAt(quick.base, activity);
  const duration = intAt(net.durations, activity);
  if (duration === 0) return (starts[activity] = earliest);
  const from = (base + intAt(indexOfDay, base + Math.min(earliest, net.slots))) | 0;
  const words = at(quick.words, activity);
  const last = intAt(quick.end, activity) - duration;
  const start =
    words === 0
      ? from
      : words === 1
        ? inOneWord(net, free, activity, from)
        : inWords(net, free, activity, from);
  if (start > last) {
    starts[activity] = net.slots;
    return net.slots + 1;
  }
  starts[activity] = intAt(dayOfIndex, start);
  return (intAt(dayOfIndex, start + duration - 1) + 1) | 0;
}

/** Places it in its one word: the first index of work days with room, and takes the units there. */
function inOneWord(net: DatedNet, free: Int32Array, activity: number, from: number): number {
  const { quick, dayOfIndex } = net;
  const duration = intAt(net.durations, activity);
  const units = intAt(quick.units, activity);
  const row = intAt(quick.row, activity);
  const end = intAt(quick.end, activity);
  const start = fitIn(dayOfIndex, free, row, units, intAt(quick.guard, activity), from, duration, end);
  if (start + duration <= end) take(dayOfIndex, free, row, units, start, duration);
  return start;
}

/** The same in several words, one after the other until none moves it any more. */
function inWords(net: DatedNet, free: Int32Array, activity: number, from: number): number {
  const { quick, uses, dayOfIndex, slots, guards } = net;
  const { word, work } = uses;
  const duration = intAt(net.durations, activity);
  const end = intAt(quick.end, activity);
  const first = intAt(uses.first, activity);
  const behind = intAt(uses.first, activity + 1);
  let start = from;
  for (let use = first, settled = first; settled < behind;) {
    const w = intAt(word, use);
    const fit = fitIn(dayOfIndex, free, w * slots, intAt(work, use), intAt(guards, w), start, duration, end);
    if (fit + duration > end) return end;
    settled = fit === start ? settled + 1 : first + 1;
    start = fit;
    use = use + 1 === behind ? first : use + 1;
  }
  for (let use = first; use < behind; use = (use + 1) | 0)
    take(dayOfIndex, free, intAt(word, use) * slots, intAt(work, use), start, duration);
  return start;
}

/**
 * The first index of work days at or after `from` from which a word has room for some units; `end` when there is none.
 * From the last day back: the latest day that is too full moves the start furthest.
 */
function fitIn(
  dayOfIndex: Int32Array,
  free: Int32Array,
  row: number,
  units: number,
  guard: number,
  from: number,
  duration: number,
  end: number,
): number {
  let known = from;
  let to = (known + duration) | 0;
  if (to > end) return end;
  for (let k = (to - 1) | 0; k >= known; k = (k - 1) | 0) {
    if (((intAt(free, row + intAt(dayOfIndex, k)) - units) & guard) !== guard) {
      // The days after k are known to have room.
      known = to;
      to = (k + 1 + duration) | 0;
      if (to > end) return end;
      k = to;
    }
  }
  return (to - duration) | 0;
}

/** Takes units of a word on some work days. */
function take(
  dayOfIndex: Int32Array,
  free: Int32Array,
  row: number,
  units: number,
  start: number,
  duration: number,
): void {
  for (let k = start; k < start + duration; k = (k + 1) | 0) {
    const slot = row + intAt(dayOfIndex, k);
    free[slot] = (intAt(free, slot) - units) | 0;
  }
}
