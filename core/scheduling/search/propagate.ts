import { intAt } from '../../base';
import type { Arcs, DatedNet } from './dated-net';
import { demandedStart, place } from './dated-pass';

/** Earliest times without competition for resources: relationships, dates, calendars, closures and windows. */
export interface Earliest {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
  /** The lag that decided the start: its position among `minimums`, or count of those + position in `pulls`; -1. */
  readonly cause: Int32Array;
  /** An activity that cannot keep its latest finish however early it starts, -1 when there is none. */
  readonly broken: number;
}

/**
 * Pushes every activity to its earliest start, maximum lags included, until nothing moves or one is too late.
 * @param floor no start before this moment.
 * @param due latest finishes.
 * @param orders further pairs of which the second may not start before the first is finished.
 */
export function earliestTimes(net: DatedNet, floor: number, due: Int32Array, orders: Orders = []): Earliest {
  const { count } = net;
  const times = { starts: new Int32Array(count), finishes: new Int32Array(count) };
  const cause = new Int32Array(count).fill(-1);
  const demanded = Int32Array.from(net.release, release => Math.max(floor, release));
  let broken = -1;
  for (let i = 0; i < count && broken < 0; i++) broken = settle(net, i, demanded, due, times);
  for (let hasMoved = true; hasMoved && broken < 0;) {
    hasMoved = false;
    for (const [first, second] of orders) {
      const finish = intAt(times.finishes, first);
      if (finish <= intAt(times.starts, second)) continue;
      demanded[second] = finish;
      hasMoved = true;
      broken = settle(net, second, demanded, due, times);
      if (broken >= 0) return { ...times, cause, broken };
    }
    for (let i = 0; i < count && broken < 0; i++) {
      const before = intAt(demanded, i);
      raise(net, net.minimums, 0, i, times, demanded, cause);
      raise(net, net.pulls, net.minimums.other.length, i, times, demanded, cause);
      if (intAt(demanded, i) <= before) continue;
      hasMoved = true;
      broken = settle(net, i, demanded, due, times);
    }
  }
  return { ...times, cause, broken };
}

/** Pairs of activities, the second after the first. */
export type Orders = readonly (readonly [number, number])[];

type TimesSoFar = Pick<Earliest, 'starts' | 'finishes'>;

/** Starts the activity at its demanded start or as soon after as it can; itself when that is too late. */
function settle(net: DatedNet, i: number, demanded: Int32Array, due: Int32Array, times: TimesSoFar): number {
  const only = intAt(net.fixed, i);
  place(net, net.template, i, only >= 0 ? only : Math.min(intAt(demanded, i), net.slots), times);
  const isLate = intAt(times.finishes, i) > intAt(due, i) || (only >= 0 && intAt(demanded, i) > only);
  return isLate ? i : -1;
}

function raise(
  net: DatedNet,
  arcs: Arcs,
  offset: number,
  i: number,
  times: TimesSoFar,
  demanded: Int32Array,
  cause: Int32Array,
): void {
  for (let arc = intAt(arcs.first, i); arc < intAt(arcs.first, i + 1); arc++) {
    const start = demandedStart(net, arcs, arc, intAt(arcs.other, arc), i, times);
    if (start <= Math.max(intAt(demanded, i), intAt(times.starts, i))) continue;
    demanded[i] = start;
    cause[i] = offset + arc;
  }
}

/** The activities that push `broken` too late, itself first, back to where the chain begins or closes. */
export function chainTo(net: DatedNet, earliest: Earliest): number[] {
  const chain: number[] = [];
  let activity = earliest.broken;
  while (activity >= 0 && !chain.includes(activity)) {
    chain.push(activity);
    const arc = intAt(earliest.cause, activity);
    const minimums = net.minimums.other.length;
    if (arc < 0) break;
    activity = (arc < minimums ? net.minimums.other[arc] : net.pulls.other[arc - minimums]) ?? -1;
  }
  return chain;
}
