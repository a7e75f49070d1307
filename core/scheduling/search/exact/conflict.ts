import { NONE } from '../dice';
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
  let running: number[] = [];
  let next = 0;
  const firstDay = times.starts[holders[0] ?? NONE] ?? NONE;
  for (let day = firstDay; next < holders.length || running.length > 0; day++) {
    running = running.filter(i => (times.finishes[i] ?? NONE) > day);
    while (next < holders.length && (times.starts[holders[next] ?? NONE] ?? NONE) <= day)
      running.push(holders[next++] ?? NONE);
    if (exceeds(net, running, day)) return conflictOn(net, running, day);
  }
  return null;
}

function conflictOn(net: DatedNet, running: readonly number[], day: number): Conflict {
  const isOverPeak = exceeds(net, running, PEAK_DAY);
  const activities = smallestExceeding(net, running, isOverPeak ? PEAK_DAY : day);
  const isAlike = activities.every(i => net.calendarOf[i] === net.calendarOf[activities[0] ?? NONE]);
  return { day, activities, isLasting: isOverPeak && isAlike };
}

function holdersByStart(net: DatedNet, times: Times): number[] {
  const { first } = net.uses;
  const holds = (i: number): boolean => (first[i] ?? NONE) < (first[i + 1] ?? NONE);
  return [...times.starts.keys()]
    .filter(i => (net.durations[i] ?? NONE) > 0 && holds(i))
    .sort((a, b) => (times.starts[a] ?? NONE) - (times.starts[b] ?? NONE));
}

function exceeds(net: DatedNet, running: readonly number[], day: number): boolean {
  const { words, slots } = net;
  for (let word = 0; word < words; word++) {
    const guard = net.guards[word] ?? NONE;
    let free = net.template[word * slots + day] ?? NONE;
    for (const i of running) {
      free = (free - demandOn(net, i, word, day)) | 0;
      if ((free & guard) !== guard) return true;
    }
  }
  return false;
}

function demandOn(net: DatedNet, activity: number, word: number, day: number): number {
  const calendar = net.calendars[net.calendarOf[activity] ?? NONE];
  const isWork = calendar !== undefined && calendar.indexOfDay[day] !== calendar.indexOfDay[day + 1];
  return (isWork ? net.workDemands : net.idleDemands)[activity * net.words + word] ?? NONE;
}

/** Leaves out, the lightest first, whatever is not needed to exceed a capacity. */
function smallestExceeding(net: DatedNet, running: readonly number[], day: number): number[] {
  let set = [...running];
  const lightestFirst = [...running].sort((a, b) => (net.weights[a] ?? NONE) - (net.weights[b] ?? NONE));
  for (const i of lightestFirst) {
    const without = set.filter(other => other !== i);
    if (exceeds(net, without, day)) set = without;
  }
  return set;
}
