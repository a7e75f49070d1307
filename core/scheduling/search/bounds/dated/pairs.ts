import type { DatedNet } from '../../dated-net';
import { NONE } from '../../dice';
import type { Links } from '../../plain-net';
import { latestFinish, latestStart, linksOf, startFrom, type DatedWindows } from './windows';

/**
 * Pairs of activities that can never run at once: together they demand more than a capacity ever is, and they work
 * on the same days or hold it over idle days too.
 */
export function incompatiblePairs(net: DatedNet): Int32Array {
  const { uses, fixed, count, orders } = net;
  const holders = Int32Array.from({ length: count }, (_, i) => i).filter(
    i => uses.first[i] !== uses.first[i + 1] && (fixed[i] ?? NONE) < 0 && (net.durations[i] ?? NONE) > 0,
  );
  const pairs: number[] = [];
  for (let a = 0; a < holders.length; a++) {
    for (let b = a + 1; b < holders.length; b++) {
      const i = holders[a] ?? NONE;
      const j = holders[b] ?? NONE;
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
  for (let use = uses.first[i] ?? NONE; use < (uses.first[i + 1] ?? NONE); use++) {
    const word = uses.word[use] ?? NONE;
    const guard = guards[word] ?? NONE;
    const left = (template[word * slots] ?? NONE) - (own[use] ?? NONE) - (demands[j * words + word] ?? NONE);
    if ((left & guard) !== guard) return true;
  }
  return false;
}

/** The others that an activity can never run beside. */
export function rivalsOf(count: number, pairs: Int32Array): Links {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (let p = 0; p < pairs.length; p += 2) {
    const i = pairs[p] ?? NONE;
    const j = pairs[p + 1] ?? NONE;
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
    for (let k = first[i] ?? NONE, end = first[i + 1] ?? NONE; k < end; k++) {
      if (!orderPair(windows, i, list[k] ?? NONE)) return false;
    }
  }
  return true;
}

function orderPair(windows: DatedWindows, i: number, j: number): boolean {
  const [forward, backward] = windows.views;
  const canFirst = (forward.times.finishes[i] ?? NONE) <= latestStart(backward, j);
  const canSecond = (forward.times.finishes[j] ?? NONE) <= latestStart(backward, i);
  if (canFirst && canSecond) return true;
  if (!canFirst && !canSecond) return false;
  return canFirst ? putBefore(windows, i, j) : putBefore(windows, j, i);
}

/** Puts the first before the second; false when a window has become too short. */
export function putBefore(windows: DatedWindows, first: number, second: number): boolean {
  const [forward, backward] = windows.views;
  return (
    startFrom(windows, 0, second, forward.times.finishes[first] ?? NONE) &&
    startFrom(windows, 1, first, backward.times.finishes[second] ?? NONE)
  );
}

/** Whether the windows leave both orders of a pair open. */
export function isOpenPair(windows: DatedWindows, i: number, j: number): boolean {
  const [forward, backward] = windows.views;
  const isDone = (first: number, second: number): boolean =>
    latestFinish(backward, first) <= (forward.times.starts[second] ?? NONE);
  return !isDone(i, j) && !isDone(j, i);
}
