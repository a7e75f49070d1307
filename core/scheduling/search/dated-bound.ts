import { NONE } from './dice';
import type { DatedNet } from './dated-net';
import { earliestTimes } from './propagate';

/**
 * The last finish that relationships, dates, calendars, closures and windows allow at best, without competition
 * for resources.
 * @returns a moment of the axis.
 */
export function datedBound(net: DatedNet): number {
  const earliest = earliestTimes(net, net.base, net.due);
  let last = net.base;
  for (let i = 0; i < net.count; i++) last = Math.max(last, earliest.finishes[i] ?? NONE);
  return last;
}
