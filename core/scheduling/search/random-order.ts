import { NONE, type Dice } from './dice';
import type { Links } from './plain-net';

/** What drawing an order needs to know of a network. */
export interface Ordered {
  readonly count: number;
  readonly predecessors: Links;
  readonly successors: Links;
}

/** A topological order drawn at random. */
export function randomOrder(net: Ordered, dice: Dice): Int32Array {
  return drawOrder(net, ready => dice.below(ready.length));
}

/** An order of all activities, each after its predecessors, drawn with a bias towards small `priorities`. */
export function sampledOrder(net: Ordered, priorities: Int32Array, bias: number, dice: Dice): Int32Array {
  return drawOrder(net, ready => drawBiased(ready, priorities, bias, dice));
}

function drawOrder(net: Ordered, draw: (ready: readonly number[]) => number): Int32Array {
  const open = openCounts(net);
  const order = new Int32Array(net.count);
  const ready: number[] = [];
  for (let i = 0; i < net.count; i++) if (open[i] === 0) ready.push(i);
  for (let k = 0; k < net.count; k++) {
    const place = draw(ready);
    const activity = ready[place] ?? NONE;
    order[k] = activity;
    ready[place] = ready[ready.length - 1] ?? NONE;
    ready.pop();
    release(net, activity, open, ready);
  }
  return order;
}

/** How many predecessors of each activity are still to come. */
export function openCounts(net: Ordered): Int32Array {
  const { first } = net.predecessors;
  const open = new Int32Array(net.count);
  for (let i = 0; i < net.count; i++) open[i] = (first[i + 1] ?? NONE) - (first[i] ?? NONE);
  return open;
}

/** Counts the activity as done; successors with no predecessor left become ready. */
export function release(net: Ordered, activity: number, open: Int32Array, ready: number[]): void {
  const { first, list } = net.successors;
  for (let s = first[activity] ?? NONE; s < (first[activity + 1] ?? NONE); s++) {
    const next = list[s] ?? NONE;
    const left = (open[next] ?? NONE) - 1;
    open[next] = left;
    if (left === 0) ready.push(next);
  }
}

/** Among more than this the draw is a tournament of a few instead. */
const MANY = 64;
const FEW = 8;

/** Working memory of a draw. */
const chances = new Float64Array(MANY);

function bestOfFew(from: readonly number[], priorities: Int32Array, dice: Dice): number {
  let best = dice.below(from.length);
  for (let k = 1; k < FEW; k++) {
    const place = dice.below(from.length);
    if ((priorities[from[place] ?? NONE] ?? NONE) < (priorities[from[best] ?? NONE] ?? NONE)) best = place;
  }
  return best;
}

/**
 * The place in `from` that was drawn: chance in proportion to (largest priority - own + 1) to the power `bias`.
 * @source Kolisch and Drexl, European Journal of Operational Research 91 (1996) 22-37 (regret-based biased
 *   random sampling).
 */
export function drawBiased(
  from: readonly number[],
  priorities: Int32Array,
  bias: number,
  dice: Dice,
): number {
  if (from.length > MANY) return bestOfFew(from, priorities, dice);
  let largest = -Infinity;
  for (const activity of from) {
    const own = priorities[activity] ?? NONE;
    if (own > largest) largest = own;
  }
  let sum = 0;
  for (let place = 0; place < from.length; place++) {
    const regret = largest - (priorities[from[place] ?? NONE] ?? NONE) + 1;
    sum += chances[place] = bias === 2 ? regret * regret : regret ** bias;
  }
  let left = dice.share() * sum;
  for (let place = 0; place < from.length; place++) {
    left -= chances[place] ?? NONE;
    if (left < 0) return place;
  }
  return from.length - 1;
}

/** The wished order, with the predecessors of an activity pulled forward where they stand behind it. */
export function inOrder(net: Ordered, wished: readonly number[]): Int32Array {
  const list = new Int32Array(net.count);
  const isIn = new Uint8Array(net.count);
  let filled = 0;
  const put = (activity: number): void => {
    if (isIn[activity] === 1) return;
    isIn[activity] = 1;
    const { first, list: before } = net.predecessors;
    for (let p = first[activity] ?? NONE; p < (first[activity + 1] ?? NONE); p++) put(before[p] ?? NONE);
    list[filled++] = activity;
  };
  for (const activity of wished) put(activity);
  return list;
}
