import { intAt } from '../../../../base';
import type { DatedNet } from '../../dated-net';
import type { Links } from '../../plain-net';
import { latestFinish, latestStart, linksOf, startFrom, type DatedWindows } from './windows';

/**
 * Pairs of activities that can never run at once: together they demand more than a capacity ever is, and they work
 * on the same days or hold it over idle days too.
 */
export function incompatiblePairs(net: DatedNet): Int32Array {
  const { uses, fixed, count, orders } = net;
  const holders = Int32Array.from({ length: count }, (_, i) => i).filter(
    i => uses.first[i] !== uses.first[i + 1] && intAt(fixed, i) < 0 && intAt(net.durations, i) > 0,
  );
  const pairs: number[] = [];
  for (let a = 0; a < holders.length; a++) {
    for (let b = a + 1; b < holders.length; b++) {
      const i = intAt(holders, a);
      const j = intAt(holders, b);
      if (isTooMuch(net, i, j) && !orders.isApart(i, j)) pairs.push(i, j);
    }
  }
  return Int32Array.from(pairs);
}

function isTooMuch(net: DatedNet, i: number, j: number): boolean {
  const { uses, words, guards, template, slots } = net;
  const isAlike = net.calendarOf[i] === net.calendarOf[j];
  const demands = isAlike ? net.workDemands : net.idleDemands;
  const own = isAlike ? uses.work : uses.idle;
  for (let use = intAt(uses.first, i); use < intAt(uses.first, i + 1); use++) {
    const word = intAt(uses.word, use);
    const guard = intAt(guards, word);
    const left = intAt(template, word * slots) - intAt(own, use) - intAt(demands, j * words + word);
    if ((left & guard) !== guard) return true;
  }
  return false;
}

/** The others that an activity can never run beside. */
export function rivalsOf(count: number, pairs: Int32Array): Links {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (let p = 0; p < pairs.length; p += 2) {
    const i = intAt(pairs, p);
    const j = intAt(pairs, p + 1);
    lists[i]?.push(j);
    lists[j]?.push(i);
  }
  return linksOf(lists);
}

/** Of a pair that cannot run at once, one goes first: when only one order fits the windows, it is enforced. */
export function orderPairs(windows: DatedWindows, { first, list }: Links): boolean {
  const { isNarrowed } = windows;
  if (!windows.hasNarrowed) return true;
  windows.hasNarrowed = false;
  for (let i = 0; i < isNarrowed.length; i++) {
    if (isNarrowed[i] === 0) continue;
    isNarrowed[i] = 0;
    for (let k = intAt(first, i), end = intAt(first, i + 1); k < end; k++) {
      if (!orderPair(windows, i, intAt(list, k))) return false;
    }
  }
  return true;
}

function orderPair(windows: DatedWindows, i: number, j: number): boolean {
  const [forward, backward] = windows.views;
  const canFirst = intAt(forward.times.finishes, i) <= latestStart(backward, j);
  const canSecond = intAt(forward.times.finishes, j) <= latestStart(backward, i);
  if (canFirst && canSecond) return true;
  if (!canFirst && !canSecond) return false;
  return canFirst ? putBefore(windows, i, j) : putBefore(windows, j, i);
}

/** Puts the first before the second; false when a window has become too short. */
export function putBefore(windows: DatedWindows, first: number, second: number): boolean {
  const [forward, backward] = windows.views;
  return (
    startFrom(windows, 0, second, intAt(forward.times.finishes, first)) &&
    startFrom(windows, 1, first, intAt(backward.times.finishes, second))
  );
}

/** Whether the windows leave both orders of a pair open. */
export function isOpenPair(windows: DatedWindows, i: number, j: number): boolean {
  const [forward, backward] = windows.views;
  const isDone = (first: number, second: number): boolean =>
    latestFinish(backward, first) <= intAt(forward.times.starts, second);
  return !isDone(i, j) && !isDone(j, i);
}
