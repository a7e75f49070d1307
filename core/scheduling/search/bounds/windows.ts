import { NONE } from '../dice';
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
  if (moment > (windows.from[i] ?? NONE)) {
    windows.from[i] = moment;
    windows.moves++;
  }
  return (windows.from[i] ?? NONE) + (net.durations[i] ?? NONE) <= (windows.to[i] ?? NONE);
}

/** Moves the latest finish; false when the window has become too short. */
export function finishBy(net: BoundNet, windows: Windows, i: number, moment: number): boolean {
  if (moment < (windows.to[i] ?? NONE)) {
    windows.to[i] = moment;
    windows.moves++;
  }
  return (windows.from[i] ?? NONE) + (net.durations[i] ?? NONE) <= (windows.to[i] ?? NONE);
}

/** Pushes windows along the relationships; false when one has become too short. */
export function alongRelationships(net: BoundNet, windows: Windows): boolean {
  const { order, predecessors, successors, durations, count } = net;
  const { from, to } = windows;
  for (let k = 0; k < count; k++) {
    const i = order[k] ?? NONE;
    const finish = (from[i] ?? NONE) + (durations[i] ?? NONE);
    for (let s = successors.first[i] ?? NONE; s < (successors.first[i + 1] ?? NONE); s++) {
      if (!startFrom(net, windows, successors.list[s] ?? NONE, finish)) return false;
    }
  }
  for (let k = count - 1; k >= 0; k--) {
    const i = order[k] ?? NONE;
    const start = (to[i] ?? NONE) - (durations[i] ?? NONE);
    for (let p = predecessors.first[i] ?? NONE; p < (predecessors.first[i + 1] ?? NONE); p++) {
      if (!finishBy(net, windows, predecessors.list[p] ?? NONE, start)) return false;
    }
  }
  return true;
}
