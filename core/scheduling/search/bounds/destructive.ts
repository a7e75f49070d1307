import { boundNetOf, type BoundNet } from './bound-net';
import { energyBound } from './energy';
import { withinCapacity } from './energetic';
import { incompatiblePairs, orderPairsByWindows } from './pairs';
import { besideCompulsoryParts } from './timetable';
import { alongRelationships, windowsFor, type Windows } from './windows';

export { boundNetOf, energyBound };

/** Rounds of the rules before an assumed end counts as not refuted. */
const ROUNDS = 30;

/**
 * Raises a lower bound by refuting ends: assumes that everything finishes by `bound`, and when the rules find a
 * contradiction no schedule is that short.
 * @param bound a valid lower bound to start from.
 * @param best stop there: nothing better is known to be needed.
 * @source Klein and Scholl, European Journal of Operational Research 112 (1999) 322-346 (destructive improvement).
 */
export function destructiveBound(
  net: BoundNet,
  bound: number,
  best: number,
  shouldStop: () => boolean,
): number {
  const pairs = incompatiblePairs(net);
  let proved = bound;
  while (proved < best && !shouldStop() && isRefuted(net, windowsFor(net, proved), pairs)) proved++;
  return proved;
}

/** Whether the rules find that nothing fits the windows. */
export function isRefuted(net: BoundNet, windows: Windows, pairs: Int32Array): boolean {
  for (let round = 0; round < ROUNDS; round++) {
    const before = windows.moves;
    const holds =
      alongRelationships(net, windows) &&
      orderPairsByWindows(net, windows, pairs) &&
      besideCompulsoryParts(net, windows) &&
      (windows.moves !== before || withinCapacity(net, windows, true));
    if (!holds) return true;
    if (windows.moves === before) return false;
  }
  return false;
}
