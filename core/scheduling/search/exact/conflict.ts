import { at, intAt, valueAt } from '../../../base';
import type { DatedNet } from '../dated-net';
import type { Times } from '../dated-pass';

/** A day and a smallest set of activities that together exceed a capacity on it. */
export interface Conflict {
  readonly day: number;
  readonly activities: readonly number[];
  /** Whether they can never all run at once, so that one must be finished before another starts. */
  readonly isLasting: boolean;
}

/** Before the first day of the problem every capacity is at its largest and every day a work day. */
const PEAK_DAY = 0;

/** The first day on which activities at the given times exceed a capacity, null when there is none. */
export function firstConflict(net: DatedNet, times: Times): Conflict | null {
  const holders = holdersByStart(net, times);
  if (holders.length === 0) return null;
  let running: number[] = [];
  let next = 0;
  const firstDay = intAt(times.starts, at(holders, 0));
  for (let day = firstDay; next < holders.length || running.length > 0; day++) {
    running = running.filter(i => intAt(times.finishes, i) > day);
    while (next < holders.length && intAt(times.starts, at(holders, next)) <= day)
      running.push(at(holders, next++));
    if (exceeds(net, running, day)) return conflictOn(net, running, day);
  }
  return null;
}

function conflictOn(net: DatedNet, running: readonly number[], day: number): Conflict {
  const isOverPeak = exceeds(net, running, PEAK_DAY);
  const activities = smallestExceeding(net, running, isOverPeak ? PEAK_DAY : day);
  const isAlike = activities.every(i => net.calendarOf[i] === net.calendarOf[at(activities, 0)]);
  return { day, activities, isLasting: isOverPeak && isAlike };
}

function holdersByStart(net: DatedNet, times: Times): number[] {
  const { first } = net.uses;
  const holds = (i: number): boolean => intAt(first, i) < intAt(first, i + 1);
  return [...times.starts.keys()]
    .filter(i => intAt(net.durations, i) > 0 && holds(i))
    .sort((a, b) => intAt(times.starts, a) - intAt(times.starts, b));
}

function exceeds(net: DatedNet, running: readonly number[], day: number): boolean {
  const { words, slots } = net;
  for (let word = 0; word < words; word++) {
    const guard = intAt(net.guards, word);
    let free = intAt(net.template, word * slots + day);
    for (const i of running) {
      free = (free - demandOn(net, i, word, day)) | 0;
      if ((free & guard) !== guard) return true;
    }
  }
  return false;
}

function demandOn(net: DatedNet, activity: number, word: number, day: number): number {
  const calendar = net.calendars[intAt(net.calendarOf, activity)];
  const isWork = calendar !== undefined && calendar.indexOfDay[day] !== calendar.indexOfDay[day + 1];
  return intAt(isWork ? net.workDemands : net.idleDemands, activity * net.words + word);
}

/** Leaves out, the lightest first, whatever is not needed to exceed a capacity. */
function smallestExceeding(net: DatedNet, running: readonly number[], day: number): number[] {
  let set = [...running];
  const lightestFirst = [...running].sort((a, b) => valueAt(net.weights, a) - valueAt(net.weights, b));
  for (const i of lightestFirst) {
    const without = set.filter(other => other !== i);
    if (exceeds(net, without, day)) set = without;
  }
  return set;
}
