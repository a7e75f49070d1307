import { at, known } from './at';

/** An order in which every item follows all it depends on, or the items of one loop. */
export type TopologicalOrder = { readonly order: readonly number[] } | { readonly loop: readonly number[] };

/**
 * Orders `count` items so that each stands after its predecessors; ties keep the given order.
 * @param before `[predecessor, successor]` pairs of item numbers.
 * @returns the order, or one loop (each item depends on the one before it, the first on the last).
 */
export function topologicalOrder(
  count: number,
  before: readonly (readonly [number, number])[],
): TopologicalOrder {
  const successors: number[][] = Array.from({ length: count }, () => []);
  const open = new Array<number>(count).fill(0);
  for (const [from, to] of before) {
    at(successors, from).push(to);
    open[to] = at(open, to) + 1;
  }
  const ready = open.flatMap((n, i) => (n === 0 ? [i] : []));
  const order: number[] = [];
  for (let head = 0; head < ready.length; head++) {
    const item = at(ready, head);
    order.push(item);
    for (const next of at(successors, item)) {
      open[next] = at(open, next) - 1;
      if (open[next] === 0) ready.push(next);
    }
  }
  return order.length === count ? { order } : { loop: findLoop(successors, open) };
}

/** What is left without an order: each of it follows something that is left too, so the way back comes round. */
function findLoop(successors: readonly (readonly number[])[], open: readonly number[]): number[] {
  const predecessor = new Map<number, number>();
  successors.forEach((list, from) => {
    if (at(open, from) > 0) for (const to of list) predecessor.set(to, from);
  });
  const trail: number[] = [];
  let item = at([...predecessor.keys()], 0);
  while (!trail.includes(item)) {
    trail.push(item);
    item = known(predecessor, item);
  }
  return trail.slice(trail.indexOf(item)).reverse();
}
