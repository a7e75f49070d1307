import { intAt } from '../../../base';
import type { BoundNet } from './bound-net';

/** Between which moments each activity must lie, under the assumption that all ends by a given moment. */
export interface Windows {
  /** Earliest start and latest finish of each activity. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** The assumed end. */
  readonly end: number;
  /** How often a rule has moved a window. */
  moves: number;
}

export function windowsFor(net: BoundNet, end: number): Windows {
  return { from: net.heads.slice(), to: net.tails.map(tail => end - tail), end, moves: 0 };
}

/** Moves the earliest start; false when the window has become too short. */
export function startFrom(net: BoundNet, windows: Windows, i: number, moment: number): boolean {
  if (moment > intAt(windows.from, i)) {
    windows.from[i] = moment;
    windows.moves++;
  }
  return intAt(windows.from, i) + intAt(net.durations, i) <= intAt(windows.to, i);
}

/** Moves the latest finish; false when the window has become too short. */
export function finishBy(net: BoundNet, windows: Windows, i: number, moment: number): boolean {
  if (moment < intAt(windows.to, i)) {
    windows.to[i] = moment;
    windows.moves++;
  }
  return intAt(windows.from, i) + intAt(net.durations, i) <= intAt(windows.to, i);
}

/** Pushes windows along the relationships; false when one has become too short. */
export function alongRelationships(net: BoundNet, windows: Windows): boolean {
  const { order, predecessors, successors, durations, count } = net;
  const { from, to } = windows;
  for (let k = 0; k < count; k++) {
    const i = intAt(order, k);
    const finish = intAt(from, i) + intAt(durations, i);
    for (let s = intAt(successors.first, i); s < intAt(successors.first, i + 1); s++) {
      if (!startFrom(net, windows, intAt(successors.list, s), finish)) return false;
    }
  }
  for (let k = count - 1; k >= 0; k--) {
    const i = intAt(order, k);
    const start = intAt(to, i) - intAt(durations, i);
    for (let p = intAt(predecessors.first, i); p < intAt(predecessors.first, i + 1); p++) {
      if (!finishBy(net, windows, intAt(predecessors.list, p), start)) return false;
    }
  }
  return true;
}
