import { intAt } from '../../base';
import type { PlainNet } from './plain-net';

/** Reusable working memory of passes over one network. */
export interface PassMemory {
  /** What is left of the capacities, `words` entries a day slot. */
  readonly free: Int32Array;
}

/** Later than any finish with what must follow it. */
const NEVER = 1 << 30;

export function passMemoryOf(net: PlainNet): PassMemory {
  const free = new Int32Array((net.slots + 1) * net.words);
  for (let i = 0; i < free.length; i++) free[i] = intAt(net.freeDay, i % net.words);
  return { free };
}

/**
 * Serial schedule generation: takes the activities in the order of `list` and starts each as early as its
 * predecessors and the free capacities allow.
 * @param list every activity after its predecessors.
 * @param finishes receives the finish of each activity.
 * @param limit the pass ends early when the last finish must become larger (not with many packed words).
 * @returns the last finish, or minus the number of activities placed when the pass ended early.
 * @source Kolisch, European Journal of Operational Research 90 (1996) 320-333.
 */
export function serialPass(
  net: PlainNet,
  memory: PassMemory,
  list: Int32Array,
  finishes: Int32Array,
  limit = Infinity,
): number {
  return net.words === 1
    ? oneWordPass(net, memory, list, finishes, limit)
    : manyWordPass(net, memory, list, finishes);
}

function oneWordPass(
  net: PlainNet,
  memory: PassMemory,
  list: Int32Array,
  finishes: Int32Array,
  limit: number,
): number {
  const { free } = memory;
  const { durations, demands, tails, count } = net;
  const { first, list: links } = net.predecessors;
  const guards = intAt(net.guards, 0) | 0;
  const most = Math.min(limit, NEVER) | 0;
  let last = 0;
  let placed = 0;
  for (; placed < count; placed = (placed + 1) | 0) {
    const activity = intAt(list, placed);
    const duration = intAt(durations, activity);
    const demand = intAt(demands, activity);
    let start = 0;
    for (let p = intAt(first, activity), end = intAt(first, activity + 1); p < end; p = (p + 1) | 0) {
      start = Math.max(start, intAt(finishes, intAt(links, p))) | 0;
    }
    let finish = (start + duration) | 0;
    if (demand !== 0) {
      // From the last day back, two days at a time: the latest day that is too full moves the start furthest, and the
      // days after it are known to be free.
      let day = (finish - 1) | 0;
      let known = start;
      while (day >= known) {
        const later = (intAt(free, day) - demand) | 0;
        if ((later & guards) !== guards) {
          known = finish;
          finish = (day + 1 + duration) | 0;
          day = (finish - 1) | 0;
        } else if (day > known && ((intAt(free, day - 1) - demand) & guards) !== guards) {
          known = finish;
          finish = (day + duration) | 0;
          day = (finish - 1) | 0;
        } else {
          day = (day - 2) | 0;
        }
      }
      day = (finish - duration) | 0;
      for (const even = (finish - 1) | 0; day < even; day = (day + 2) | 0) {
        free[day] = (intAt(free, day) - demand) | 0;
        free[day + 1] = (intAt(free, day + 1) - demand) | 0;
      }
      if (day < finish) free[day] = (intAt(free, day) - demand) | 0;
    }
    finishes[activity] = finish;
    last = finish > last ? finish : last;
    if (finish + intAt(tails, activity) > most) break;
  }
  free.fill(intAt(net.freeDay, 0), 0, last);
  return placed < count ? -placed - 1 : last;
}

function manyWordPass(net: PlainNet, memory: PassMemory, list: Int32Array, finishes: Int32Array): number {
  const { durations, count } = net;
  const { first, list: links } = net.predecessors;
  let last = 0;
  for (let k = 0; k < count; k++) {
    const activity = intAt(list, k);
    let start = 0;
    for (let p = intAt(first, activity), end = intAt(first, activity + 1); p < end; p++) {
      const finish = intAt(finishes, intAt(links, p));
      if (finish > start) start = finish;
    }
    const duration = intAt(durations, activity);
    let finish = start + duration;
    for (let day = start; day < finish; day++) {
      if (!fitsDay(net, memory, activity, day)) finish = day + 1 + duration;
    }
    for (let day = finish - duration; day < finish; day++) holdDay(net, memory, activity, day);
    finishes[activity] = finish;
    if (finish > last) last = finish;
  }
  clearDays(net, memory, last);
  return last;
}

function fitsDay(net: PlainNet, memory: PassMemory, activity: number, day: number): boolean {
  const { words, demands, guards } = net;
  if (words === 1) {
    const only = intAt(guards, 0);
    return ((intAt(memory.free, day) - intAt(demands, activity)) & only) === only;
  }
  for (let word = 0; word < words; word++) {
    const guard = intAt(guards, word);
    const left = (intAt(memory.free, day * words + word) - intAt(demands, activity * words + word)) | 0;
    if ((left & guard) !== guard) return false;
  }
  return true;
}

function holdDay(net: PlainNet, memory: PassMemory, activity: number, day: number): void {
  const { words, demands } = net;
  for (let word = 0; word < words; word++) {
    const slot = day * words + word;
    memory.free[slot] = (intAt(memory.free, slot) - intAt(demands, activity * words + word)) | 0;
  }
}

/** Frees the days before `last` again. */
export function clearDays(net: PlainNet, memory: PassMemory, last: number): void {
  const { words, freeDay } = net;
  for (let slot = 0; slot < last * words; slot++) memory.free[slot] = intAt(freeDay, slot % words);
}

/** Whether the activity fits the free capacities on every day from `start` on; used by other generators. */
export function fitsFrom(net: PlainNet, memory: PassMemory, activity: number, start: number): boolean {
  const finish = start + intAt(net.durations, activity);
  for (let day = start; day < finish; day++) if (!fitsDay(net, memory, activity, day)) return false;
  return true;
}

/** Whether the activity fits the free capacities on a day; it always does when it lasts no day. */
export function fitsOn(net: PlainNet, memory: PassMemory, activity: number, day: number): boolean {
  return net.durations[activity] === 0 || fitsDay(net, memory, activity, day);
}

/** Takes the activity's demand off the free capacities from `start` on. */
export function holdFrom(net: PlainNet, memory: PassMemory, activity: number, start: number): void {
  const finish = start + intAt(net.durations, activity);
  for (let day = start; day < finish; day++) holdDay(net, memory, activity, day);
}

/** Gives the demand of an activity placed at `start` back. */
export function releaseFrom(net: PlainNet, memory: PassMemory, activity: number, start: number): void {
  const { words, demands } = net;
  const finish = start + intAt(net.durations, activity);
  for (let slot = start * words; slot < finish * words; slot++) {
    memory.free[slot] = (intAt(memory.free, slot) + intAt(demands, activity * words + (slot % words))) | 0;
  }
}
