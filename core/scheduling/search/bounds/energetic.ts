import { at, intAt } from '../../../base';
import type { BoundNet } from './bound-net';
import { finishBy, startFrom, type Windows } from './windows';

/**
 * Energetic reasoning: in every interval the work that must lie inside it, with each activity pushed as far out
 * as its window allows, may not exceed the capacity. For a fixed left edge the work is a sum of ramps in the
 * right edge, so one sweep serves all right edges. Intervals that are nearly full also move the activities that
 * would not fit pushed in.
 * @source Erschler and Lopez (1990); Baptiste, Le Pape and Nuijten, Annals of Operations Research 92 (1999)
 *   305-333.
 */
export function withinCapacity(net: BoundNet, windows: Windows, doesTighten: boolean): boolean {
  for (let r = 0; r < net.capacities.length; r++) {
    const users = usersOf(net, r);
    const lefts = new Set<number>();
    for (const i of users) {
      lefts.add(intAt(windows.from, i));
      lefts.add(intAt(windows.to, i) - intAt(net.durations, i));
      lefts.add(intAt(windows.from, i) + intAt(net.durations, i));
    }
    for (const left of lefts) if (!sweep(net, windows, r, users, left, doesTighten)) return false;
  }
  return true;
}

function usersOf(net: BoundNet, resource: number): number[] {
  const demands = at(net.demands, resource);
  return [...demands.keys()].filter(i => intAt(demands, i) * intAt(net.durations, i) > 0);
}

/** All intervals that begin at `left`. */
function sweep(
  net: BoundNet,
  windows: Windows,
  resource: number,
  users: readonly number[],
  left: number,
  doesTighten: boolean,
): boolean {
  const bends = new Int32Array(windows.end + 2);
  let largest = 0;
  for (const i of users) {
    const duration = intAt(net.durations, i);
    const units = intAt(at(net.demands, resource), i);
    const most = Math.min(duration, intAt(windows.from, i) + duration - left);
    if (most <= 0) continue;
    const begin = Math.max(intAt(windows.to, i) - duration, left);
    bends[begin] = intAt(bends, begin) + units;
    bends[begin + most] = intAt(bends, begin + most) - units;
    largest = Math.max(largest, units * duration);
  }
  const capacity = at(net.capacities, resource);
  let slope = 0;
  let work = 0;
  for (let right = left + 1; right <= windows.end; right++) {
    slope += intAt(bends, right - 1);
    work += slope;
    const spare = capacity * (right - left) - work;
    if (spare < 0) return false;
    const isWorthwhile = doesTighten && spare < largest && work > 0 && slope > 0 && intAt(bends, right) < 0;
    if (isWorthwhile && !tighten(net, windows, resource, users, left, right, spare)) return false;
  }
  return true;
}

/** Moves activities that would bring more work into the interval than it has room for. */
function tighten(
  net: BoundNet,
  windows: Windows,
  resource: number,
  users: readonly number[],
  left: number,
  right: number,
  spare: number,
): boolean {
  for (const i of users) {
    const duration = intAt(net.durations, i);
    const units = intAt(at(net.demands, resource), i);
    const finish = intAt(windows.from, i) + duration;
    const start = intAt(windows.to, i) - duration;
    const early = Math.max(
      0,
      Math.min(duration, finish - left, right - left, right - intAt(windows.from, i)),
    );
    const late = Math.max(0, Math.min(duration, right - start, right - left, intAt(windows.to, i) - left));
    const room = spare + units * Math.min(early, late);
    const days = Math.floor(room / units);
    if (early > days && !startFrom(net, windows, i, right - days)) return false;
    if (late > days && !finishBy(net, windows, i, left + days)) return false;
  }
  return true;
}
