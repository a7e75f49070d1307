import { NONE } from '../dice';
import type { BoundNet } from './bound-net';
import { finishBy, startFrom, type Windows } from './windows';

/** Pairs of activities that cannot run at once because together they demand more than some capacity. */
export function incompatiblePairs(net: BoundNet): Int32Array {
  const pairs: number[] = [];
  for (let i = 0; i < net.count; i++) {
    for (let j = i + 1; j < net.count; j++) {
      if ((net.durations[i] ?? NONE) === 0 || (net.durations[j] ?? NONE) === 0) continue;
      const isTooMuch = net.demands.some(
        (demands, r) => (demands[i] ?? NONE) + (demands[j] ?? NONE) > (net.capacities[r] ?? NONE),
      );
      if (isTooMuch) pairs.push(i, j);
    }
  }
  return Int32Array.from(pairs);
}

/** Of a pair that cannot run at once, one goes first: when only one order fits the windows, it is enforced. */
export function orderPairsByWindows(net: BoundNet, windows: Windows, pairs: Int32Array): boolean {
  const { durations } = net;
  const { from, to } = windows;
  for (let p = 0; p < pairs.length; p += 2) {
    const i = pairs[p] ?? NONE;
    const j = pairs[p + 1] ?? NONE;
    const both = (durations[i] ?? NONE) + (durations[j] ?? NONE);
    const canFirst = (from[i] ?? NONE) + both <= (to[j] ?? NONE);
    const canSecond = (from[j] ?? NONE) + both <= (to[i] ?? NONE);
    if (canFirst && canSecond) continue;
    if (!canFirst && !canSecond) return false;
    const [a, b] = canFirst ? [i, j] : [j, i];
    if (!startFrom(net, windows, b, (from[a] ?? NONE) + (durations[a] ?? NONE))) return false;
    if (!finishBy(net, windows, a, (to[b] ?? NONE) - (durations[b] ?? NONE))) return false;
  }
  return true;
}
