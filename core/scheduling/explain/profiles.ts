import { isoOf } from '../../calendar';
import { at } from '../../base';
import type { Placed } from '../placed';
import type { ResourcePeak, ResourceProfile } from '../result';

/** The span of a schedule in slots: first start, last finish moment. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** From the first start to the last finish of all activities. */
export function spanOf(placed: Placed): Span {
  const count = placed.compiled.problem.activities.length;
  let from = placed.finish;
  for (let i = 0; i < count; i++) from = Math.min(from, at(placed.starts, i));
  return { from, to: placed.finish };
}

/** Units in use and at hand, day by day, for every resource. */
export function resourceProfiles(placed: Placed, { from, to }: Span): Record<string, ResourceProfile> {
  const profiles = placed.compiled.problem.resources.map((resource, r) => {
    const used = at(placed.book.used, r);
    const units: number[] = [];
    const capacity: number[] = [];
    for (let day = from; day < to; day++) {
      units.push(at(used, day));
      capacity.push(placed.book.capacity(r, day));
    }
    return [resource.id, { from: isoOf(placed.compiled.first + from), units, capacity }] as const;
  });
  return Object.fromEntries(profiles);
}

/** The highest use of every resource and the first day of it. */
export function resourcePeaks(placed: Placed, { from, to }: Span): Record<string, ResourcePeak> {
  const peaks = placed.compiled.problem.resources.map((resource, r) => {
    const used = at(placed.book.used, r);
    let peakDay = from;
    for (let day = from; day < to; day++) if (at(used, day) > at(used, peakDay)) peakDay = day;
    return [resource.id, { units: at(used, peakDay), date: isoOf(placed.compiled.first + peakDay) }] as const;
  });
  return Object.fromEntries(peaks);
}

/** Days on which anything but waiting goes on, and the most workers on one of them. */
export function workedDays(placed: Placed, { from, to }: Span): { workDays: number; peakCrew: number } {
  const { compiled } = placed;
  const workers = new Int32Array(Math.max(0, to - from));
  const isWorked = new Uint8Array(workers.length);
  compiled.problem.activities.forEach((given, i) => {
    if (given.waiting === true) return;
    const { crew, open } = at(compiled.activities, i);
    for (let day = at(placed.starts, i); day < at(placed.finishes, i); day++) {
      if (open.flags[day] !== 1) continue;
      isWorked[day - from] = 1;
      workers[day - from] = at(workers, day - from) + crew.crewSize;
    }
  });
  return {
    workDays: isWorked.reduce((sum, flag) => sum + flag, 0),
    peakCrew: workers.reduce((a, b) => Math.max(a, b), 0),
  };
}
