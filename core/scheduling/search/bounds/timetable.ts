import { at, intAt } from '../../../base';
import type { BoundNet } from './bound-net';
import { finishBy, startFrom, type Windows } from './windows';

/**
 * Compulsory parts: an activity whose latest start lies before its earliest finish holds its resources in
 * between in any case. False when they exceed a capacity; otherwise activities that no longer fit beside them
 * are moved.
 * @source Lahrichi, Comptes Rendus de l'Academie des Sciences 294 (1982) 209-211 (compulsory parts).
 */
export function besideCompulsoryParts(net: BoundNet, windows: Windows): boolean {
  for (let r = 0; r < net.capacities.length; r++) {
    const profile = compulsoryProfile(net, windows, r);
    const capacity = at(net.capacities, r);
    for (const units of profile) if (units > capacity) return false;
    for (let i = 0; i < net.count; i++) if (!moveBeside(net, windows, i, r, profile)) return false;
  }
  return true;
}

function compulsoryProfile(net: BoundNet, windows: Windows, resource: number): Int32Array {
  const profile = new Int32Array(windows.end + 1);
  const demands = at(net.demands, resource);
  for (let i = 0; i < net.count; i++) {
    const duration = intAt(net.durations, i);
    const latestStart = intAt(windows.to, i) - duration;
    const earliestFinish = intAt(windows.from, i) + duration;
    const units = intAt(demands, i);
    for (let day = latestStart; day < earliestFinish; day++) profile[day] = intAt(profile, day) + units;
  }
  return profile;
}

function moveBeside(
  net: BoundNet,
  windows: Windows,
  i: number,
  resource: number,
  profile: Int32Array,
): boolean {
  const units = intAt(at(net.demands, resource), i);
  if (units === 0) return true;
  const duration = intAt(net.durations, i);
  const room = at(net.capacities, resource) - units;
  const ownFrom = intAt(windows.to, i) - duration;
  const ownTo = intAt(windows.from, i) + duration;
  const isFull = (day: number): boolean =>
    intAt(profile, day) - (day >= ownFrom && day < ownTo ? units : 0) > room;
  let start = intAt(windows.from, i);
  for (let day = start; day < start + duration; day++) {
    if (isFull(day)) start = day + 1;
    if (start > ownFrom) return false;
  }
  let finish = intAt(windows.to, i);
  for (let day = finish - 1; day >= finish - duration; day--) {
    if (isFull(day)) finish = day;
    if (finish < ownTo) return false;
  }
  return startFrom(net, windows, i, start) && finishBy(net, windows, i, finish);
}
