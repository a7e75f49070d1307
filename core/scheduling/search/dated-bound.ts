import type { DatedNet } from './dated-net';
import { earliestTimes } from './propagate';

/**
 * The earliest last finish that relationships, dates, calendars, closures and windows allow, without competition
 * for resources.
 * @returns a moment of the forward axis.
 */
export function earliestFinish(nets: readonly [DatedNet, DatedNet]): number {
  const [forward] = nets;
  const earliest = earliestTimes(forward, forward.base, forward.due);
  return earliest.finishes.reduce((last, finish) => Math.max(last, finish), forward.base);
}
