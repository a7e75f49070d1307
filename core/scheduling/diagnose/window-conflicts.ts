import { isoOf } from '../../calendar';
import { at } from '../../base';
import { reservedDays } from '../compile/compile-activities';
import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import { daysWords } from '../words';

/** Activities whose run of days on end is longer than every open window, or that have no open day at all. */
export function windowConflicts(compiled: Compiled): ConflictSet[] {
  const runs = new Map<Uint8Array, { days: number; from: number }>();
  return compiled.problem.activities.flatMap((activity, i) => {
    const { open, crew, state } = at(compiled.activities, i);
    if (state !== 'planned') return [];
    const needed = activity.consecutive ? reservedDays(activity, crew) : Math.min(1, crew.workDays);
    const longest = runs.get(open.flags) ?? longestRun(open.flags);
    runs.set(open.flags, longest);
    if (longest.days >= needed) return [];
    const weather = activity.consecutive?.weatherDays ?? 0;
    const own =
      weather > 0
        ? `${daysWords(crew.workDays, 'day')} and ${weather} of weather allowance`
        : daysWords(needed, 'day');
    const where =
      longest.days === 0
        ? 'no day is open'
        : `the longest open window has ${daysWords(longest.days, 'day')}, from ${isoOf(compiled.first + longest.from)}`;
    const sentence = `${activity.title} needs ${own} on end, but ${where}.`;
    return [{ kind: 'window', activities: [activity.id], relationships: [], resources: [], sentence }];
  });
}

function longestRun(flags: Uint8Array): { days: number; from: number } {
  let best = { days: 0, from: 0 };
  let run = 0;
  flags.forEach((flag, day) => {
    run = flag === 1 ? run + 1 : 0;
    if (run > best.days) best = { days: run, from: day - run + 1 };
  });
  return best;
}
