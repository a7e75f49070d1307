import { at, intAt } from '../../../base';
import type { BoundNet } from './bound-net';
import { finishBy, startFrom, type Windows } from './windows';

/** Pairs of activities that cannot run at once because together they demand more than some capacity. */
export function incompatiblePairs(net: BoundNet): Int32Array {
  const pairs: number[] = [];
  for (let i = 0; i < net.count; i++) {
    for (let j = i + 1; j < net.count; j++) {
      if (intAt(net.durations, i) === 0 || intAt(net.durations, j) === 0) continue;
      const isTooMuch = net.demands.some(
        (demands, r) => intAt(demands, i) + intAt(demands, j) > at(net.capacities, r),
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
    const i = intAt(pairs, p);
    const j = intAt(pairs, p + 1);
    const both = intAt(durations, i) + intAt(durations, j);
    const canFirst = intAt(from, i) + both <= intAt(to, j);
    const canSecond = intAt(from, j) + both <= intAt(to, i);
    if (canFirst && canSecond) continue;
    if (!canFirst && !canSecond) return false;
    const [a, b] = canFirst ? [i, j] : [j, i];
    if (!startFrom(net, windows, b, intAt(from, a) + intAt(durations, a))) return false;
    if (!finishBy(net, windows, a, intAt(to, b) - intAt(durations, b))) return false;
  }
  return true;
}
