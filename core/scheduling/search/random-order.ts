import { intAt, valueAt } from '../../base';
import { type Dice } from './dice';
import type { Links } from './plain-net';

/** What drawing an order needs to know of a network. */
export interface Ordered {
  readonly count: number;
  readonly predecessors: Links;
  readonly successors: Links;
}

/** The activities whose predecessors are all taken; reused from one order to the next. */
export class Ready {
  /** The ready ones, the first `size` entries. */
  readonly items: Int32Array;
  size = 0;
  /** How many predecessors of each activity are still to come. */
  private readonly open: Int32Array;
  private readonly counts: Int32Array;
  private readonly successors: Links;

  constructor({ count, predecessors, successors }: Ordered) {
    this.items = new Int32Array(count);
    this.open = new Int32Array(count);
    this.counts = this.open.map((_, i) => intAt(predecessors.first, i + 1) - intAt(predecessors.first, i));
    this.successors = successors;
  }

  /** Begins anew: only what has no predecessor is ready. */
  begin(): void {
    const { open, counts, items } = this;
    open.set(counts);
    this.size = 0;
    for (let i = 0; i < counts.length; i++) if (counts[i] === 0) items[this.size++] = i;
  }

  /** Takes the activity at a place out; the last one takes its place. */
  takeAt(place: number): number {
    const { items } = this;
    const activity = intAt(items, place);
    items[place] = intAt(items, --this.size);
    return activity;
  }

  /** Counts the activity as done; successors with no predecessor left become ready. */
  release(activity: number): void {
    const { first, list } = this.successors;
    for (let s = intAt(first, activity); s < intAt(first, activity + 1); s++) {
      const next = intAt(list, s);
      const left = intAt(this.open, next) - 1;
      this.open[next] = left;
      if (left === 0) this.items[this.size++] = next;
    }
  }
}

/** A topological order drawn at random. */
export function randomOrder(net: Ordered, dice: Dice, ready = new Ready(net)): Int32Array {
  const order = new Int32Array(net.count);
  ready.begin();
  for (let k = 0; k < order.length; k++) {
    const activity = ready.takeAt(dice.below(ready.size));
    order[k] = activity;
    ready.release(activity);
  }
  return order;
}

/**
 * Draws an order of all activities, each after its predecessors, with a bias towards small `priorities`.
 * @param order receives it.
 */
export function sampledOrder(
  ready: Ready,
  priorities: Int32Array,
  bias: number,
  dice: Dice,
  order: Int32Array,
): void {
  ready.begin();
  for (let k = 0; k < order.length; k++) {
    const activity = ready.takeAt(drawBiased(ready.items, ready.size, priorities, bias, dice));
    order[k] = activity;
    ready.release(activity);
  }
}

/** Among more than this the draw is a tournament of a few instead. */
const MANY = 64;
const FEW = 8;

/** Working memory of a draw. */
const chances = new Float64Array(MANY);

function bestOfFew(from: Int32Array, size: number, priorities: Int32Array, dice: Dice): number {
  let best = dice.below(size);
  for (let k = 1; k < FEW; k++) {
    const place = dice.below(size);
    if (intAt(priorities, intAt(from, place)) < intAt(priorities, intAt(from, best))) best = place;
  }
  return best;
}

/**
 * The place among the first `size` of `from` that was drawn: chance in proportion to (largest priority - own + 1) to
 * the power `bias`.
 * @source Kolisch and Drexl, European Journal of Operational Research 91 (1996) 22-37 (regret-based biased
 *   random sampling).
 */
export function drawBiased(
  from: Int32Array,
  size: number,
  priorities: Int32Array,
  bias: number,
  dice: Dice,
): number {
  if (size > MANY) return bestOfFew(from, size, priorities, dice);
  let largest = -Infinity;
  for (let place = 0; place < size; place++) {
    const own = intAt(priorities, intAt(from, place));
    if (own > largest) largest = own;
  }
  let sum = 0;
  for (let place = 0; place < size; place++) {
    const regret = largest - intAt(priorities, intAt(from, place)) + 1;
    sum += chances[place] = bias === 2 ? regret * regret : regret ** bias;
  }
  let left = dice.share() * sum;
  for (let place = 0; place < size; place++) {
    left -= valueAt(chances, place);
    if (left < 0) return place;
  }
  return size - 1;
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
    for (let p = intAt(first, activity); p < intAt(first, activity + 1); p++) put(intAt(before, p));
    list[filled++] = activity;
  };
  for (const activity of wished) put(activity);
  return list;
}
