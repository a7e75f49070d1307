import { NONE } from './dice';
import type { Links } from './plain-net';
import type { Ordered } from './random-order';

/** A topological order of lists of successors; shorter than `count` when there is a loop. */
export function orderOf(count: number, predecessors: Links, successors: Links): Int32Array {
  const open = new Int32Array(count);
  const order = new Int32Array(count);
  let filled = 0;
  for (let i = 0; i < count; i++) {
    open[i] = (predecessors.first[i + 1] ?? NONE) - (predecessors.first[i] ?? NONE);
    if (open[i] === 0) order[filled++] = i;
  }
  for (let k = 0; k < filled; k++) {
    const activity = order[k] ?? NONE;
    for (let s = successors.first[activity] ?? NONE; s < (successors.first[activity + 1] ?? NONE); s++) {
      const next = successors.list[s] ?? NONE;
      const left = (open[next] ?? NONE) - 1;
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
    const activity = order[k] ?? NONE;
    let longest = 0;
    for (let s = first[activity] ?? NONE; s < (first[activity + 1] ?? NONE); s++) {
      const next = list[s] ?? NONE;
      longest = Math.max(longest, (tails[next] ?? NONE) + (net.durations[next] ?? NONE));
    }
    tails[activity] = longest;
  }
  return tails;
}
