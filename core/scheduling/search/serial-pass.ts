import { NONE } from './dice';
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
  for (let i = 0; i < free.length; i++) free[i] = net.freeDay[i % net.words] ?? NONE;
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
  const guards = (net.guards[0] ?? NONE) | 0;
  const most = Math.min(limit, NEVER) | 0;
  let last = 0;
  let placed = 0;
  for (; placed < count; placed = (placed + 1) | 0) {
    const activity = list[placed] ?? NONE;
    const duration = durations[activity] ?? NONE;
    const demand = demands[activity] ?? NONE;
    let start = 0;
    for (let p = first[activity] ?? NONE, end = first[activity + 1] ?? NONE; p < end; p = (p + 1) | 0) {
      start = Math.max(start, finishes[links[p] ?? NONE] ?? NONE) | 0;
    }
    let finish = (start + duration) | 0;
    if (demand !== 0) {
      // From the last day back, two days at a time: the latest day that is too full moves the start furthest, and the
      // days after it are known to be free.
      let day = (finish - 1) | 0;
      let known = start;
      while (day >= known) {
        const later = ((free[day] ?? NONE) - demand) | 0;
        if ((later & guards) !== guards) {
          known = finish;
          finish = (day + 1 + duration) | 0;
          day = (finish - 1) | 0;
        } else if (day > known && (((free[day - 1] ?? NONE) - demand) & guards) !== guards) {
          known = finish;
          finish = (day + duration) | 0;
          day = (finish - 1) | 0;
        } else {
          day = (day - 2) | 0;
        }
      }
      day = (finish - duration) | 0;
      for (const even = (finish - 1) | 0; day < even; day = (day + 2) | 0) {
        free[day] = ((free[day] ?? NONE) - demand) | 0;
        free[day + 1] = ((free[day + 1] ?? NONE) - demand) | 0;
      }
      if (day < finish) free[day] = ((free[day] ?? NONE) - demand) | 0;
    }
    finishes[activity] = finish;
    last = finish > last ? finish : last;
    if (finish + (tails[activity] ?? NONE) > most) break;
  }
  free.fill(net.freeDay[0] ?? NONE, 0, last);
  return placed < count ? -placed - 1 : last;
}

function manyWordPass(net: PlainNet, memory: PassMemory, list: Int32Array, finishes: Int32Array): number {
  const { durations, count } = net;
  const { first, list: links } = net.predecessors;
  let last = 0;
  for (let k = 0; k < count; k++) {
    const activity = list[k] ?? NONE;
    let start = 0;
    for (let p = first[activity] ?? NONE, end = first[activity + 1] ?? NONE; p < end; p++) {
      const finish = finishes[links[p] ?? NONE] ?? NONE;
      if (finish > start) start = finish;
    }
    const duration = durations[activity] ?? NONE;
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
    const only = guards[0] ?? NONE;
    return (((memory.free[day] ?? NONE) - (demands[activity] ?? NONE)) & only) === only;
  }
  for (let word = 0; word < words; word++) {
    const guard = guards[word] ?? NONE;
    const left = ((memory.free[day * words + word] ?? NONE) - (demands[activity * words + word] ?? NONE)) | 0;
    if ((left & guard) !== guard) return false;
  }
  return true;
}

function holdDay(net: PlainNet, memory: PassMemory, activity: number, day: number): void {
  const { words, demands } = net;
  for (let word = 0; word < words; word++) {
    const slot = day * words + word;
    memory.free[slot] = ((memory.free[slot] ?? NONE) - (demands[activity * words + word] ?? NONE)) | 0;
  }
}

/** Frees the days before `last` again. */
export function clearDays(net: PlainNet, memory: PassMemory, last: number): void {
  const { words, freeDay } = net;
  for (let slot = 0; slot < last * words; slot++) memory.free[slot] = freeDay[slot % words] ?? NONE;
}

/** Whether the activity fits the free capacities on every day from `start` on; used by other generators. */
export function fitsFrom(net: PlainNet, memory: PassMemory, activity: number, start: number): boolean {
  const finish = start + (net.durations[activity] ?? NONE);
  for (let day = start; day < finish; day++) if (!fitsDay(net, memory, activity, day)) return false;
  return true;
}

/** Whether the activity fits the free capacities on a day; it always does when it lasts no day. */
export function fitsOn(net: PlainNet, memory: PassMemory, activity: number, day: number): boolean {
  return net.durations[activity] === 0 || fitsDay(net, memory, activity, day);
}

/** Takes the activity's demand off the free capacities from `start` on. */
export function holdFrom(net: PlainNet, memory: PassMemory, activity: number, start: number): void {
  const finish = start + (net.durations[activity] ?? NONE);
  for (let day = start; day < finish; day++) holdDay(net, memory, activity, day);
}

/** Gives the demand of an activity placed at `start` back. */
export function releaseFrom(net: PlainNet, memory: PassMemory, activity: number, start: number): void {
  const { words, demands } = net;
  const finish = start + (net.durations[activity] ?? NONE);
  for (let slot = start * words; slot < finish * words; slot++) {
    memory.free[slot] =
      ((memory.free[slot] ?? NONE) + (demands[activity * words + (slot % words)] ?? NONE)) | 0;
  }
}
