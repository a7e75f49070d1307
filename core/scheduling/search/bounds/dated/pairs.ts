import type { DatedNet } from '../../dated-net';
import { NONE } from '../../dice';
import { latestFinish, latestStart, startFrom, type DatedWindows } from './windows';

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

/** Of a pair that cannot run at once, one goes first: when only one order fits the windows, it is enforced. */
export function orderPairs(windows: DatedWindows, pairs: Int32Array): boolean {
  const [forward, backward] = windows.views;
  for (let p = 0; p < pairs.length; p += 2) {
    const i = pairs[p] ?? NONE;
    const j = pairs[p + 1] ?? NONE;
    const canFirst = (forward.times.finishes[i] ?? NONE) <= latestStart(backward, j);
    const canSecond = (forward.times.finishes[j] ?? NONE) <= latestStart(backward, i);
    if (canFirst && canSecond) continue;
    if (!canFirst && !canSecond) return false;
    if (!(canFirst ? putBefore(windows, i, j) : putBefore(windows, j, i))) return false;
  }
  return true;
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
