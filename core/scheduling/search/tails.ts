import { intAt } from '../../base';
import type { Links } from './plain-net';
import type { Ordered } from './random-order';

/** A topological order of lists of successors; shorter than `count` when there is a loop. */
export function orderOf(count: number, predecessors: Links, successors: Links): Int32Array {
  const open = new Int32Array(count);
  const order = new Int32Array(count);
  let filled = 0;
  for (let i = 0; i < count; i++) {
    open[i] = intAt(predecessors.first, i + 1) - intAt(predecessors.first, i);
    if (open[i] === 0) order[filled++] = i;
  }
  for (let k = 0; k < filled; k++) {
    const activity = intAt(order, k);
    for (let s = intAt(successors.first, activity); s < intAt(successors.first, activity + 1); s++) {
      const next = intAt(successors.list, s);
      const left = intAt(open, next) - 1;
      open[next] = left;
      if (left === 0) order[filled++] = next;
    }
  }
  return order.subarray(0, filled);
}

/** The longest path from the finish of each activity to the end of the project. */
export function tailsOf(net: Ordered & { readonly durations: Int32Array }): Int32Array {
  const order = orderOf(net.count, net.predecessors, net.successors);
  const tails = new Int32Array(net.count);
  const { first, list } = net.successors;
  for (let k = order.length - 1; k >= 0; k--) {
    const activity = intAt(order, k);
    let longest = 0;
    for (let s = intAt(first, activity); s < intAt(first, activity + 1); s++) {
      const next = intAt(list, s);
      longest = Math.max(longest, intAt(tails, next) + intAt(net.durations, next));
    }
    tails[activity] = longest;
  }
  return tails;
}
