import { NONE, type Dice } from './dice';
import type { Individual } from './individual';
import type { Links } from './plain-net';
import { randomOrder } from './random-order';
import type { Side } from './side';

/** A stretch of time in one parent whose activities the child keeps together. */
export interface Block {
  readonly from: number;
  readonly to: number;
}

/**
 * Makes the activity lists for one time direction out of schedules of the other direction: what finishes last
 * there comes first here. Sorting by time keeps every activity after its predecessors; equal times are put in
 * the order of one of several random topological orders.
 * @source Valls, Ballestin and Quintanilla, European Journal of Operational Research 165 (2005) 375-386
 *   (justification); Debels, De Reyck, Leus and Vanhoucke, same journal 169 (2006) 638-653 (topological order
 *   representation).
 */
export class ListMaker {
  private readonly counts: Int32Array;
  private readonly keys: Int32Array;
  private readonly marks: Int32Array;
  private readonly sorted: Int32Array;
  private stamp = 0;
  private readonly tieOrders: readonly Int32Array[];
  private readonly side: Side;
  private readonly dice: Dice;

  constructor(side: Side, dice: Dice, tieOrders: number) {
    this.side = side;
    this.dice = dice;
    this.counts = new Int32Array(3 * side.span + 8);
    this.keys = new Int32Array(side.count);
    this.marks = new Int32Array(side.count);
    this.sorted = new Int32Array(side.count);
    this.tieOrders = Array.from({ length: tieOrders }, () => randomOrder(side, dice));
  }

  /** The list of a single schedule. */
  fromOne(parent: Individual, list: Int32Array): void {
    const { keys } = this;
    const { last, low, finishes } = parent;
    for (let i = 0; i < keys.length; i++) keys[i] = last - (finishes[i] ?? NONE);
    this.sortByKeys(last - low + 1, list);
  }

  /**
   * The list of a child: the activities that finish inside the block of `keeper` stay together in its order;
   * those after and before the block follow the order of `other`.
   * @source Debels and Vanhoucke, Lecture Notes in Computer Science 3483 (2005) 378-387 (bi-population).
   */
  fromTwo(keeper: Individual, other: Individual, block: Block, list: Int32Array): void {
    const { keys } = this;
    const { finishes } = keeper;
    const rest = other.finishes;
    const { last } = other;
    const { from, to } = block;
    const middle = last - other.low + 1 + to;
    const end = middle - from + last;
    for (let i = 0; i < keys.length; i++) {
      const finish = finishes[i] ?? NONE;
      if (finish > to) keys[i] = last - (rest[i] ?? NONE);
      else if (finish > from) keys[i] = middle - finish;
      else keys[i] = end - (rest[i] ?? NONE);
    }
    this.sortByKeys(end - other.low + 1, list);
  }

  private sortByKeys(span: number, list: Int32Array): void {
    const { counts, keys } = this;
    const order = this.tieOrders[this.dice.below(this.tieOrders.length)] ?? keys;
    counts.fill(0, 0, span + 1);
    for (let i = 0; i < keys.length; i++) {
      const place = (keys[i] ?? NONE) + 1;
      counts[place] = (counts[place] ?? NONE) + 1;
    }
    for (let key = 1, sum = 0; key <= span; key++) counts[key] = sum += counts[key] ?? NONE;
    const target = this.side.needsRepair ? this.sorted : list;
    for (let k = 0; k < keys.length; k++) {
      const activity = order[k] ?? NONE;
      const key = keys[activity] ?? NONE;
      const place = counts[key] ?? NONE;
      target[place] = activity;
      counts[key] = place + 1;
    }
    if (this.side.needsRepair) this.repair(list);
  }

  /** Copies the sorted order, pulling the predecessors of an activity forward where they stand behind it. */
  private repair(list: Int32Array): void {
    const done = ++this.stamp;
    let filled = 0;
    const put = (activity: number): void => {
      if (this.marks[activity] === done) return;
      this.marks[activity] = done;
      const { first, list: before } = this.side.predecessors;
      for (let p = first[activity] ?? NONE; p < (first[activity + 1] ?? NONE); p++) put(before[p] ?? NONE);
      list[filled++] = activity;
    };
    for (const activity of this.sorted) put(activity);
  }

  /** Moves one activity, drawn at random, somewhere else between its predecessors and successors. */
  shiftOne(list: Int32Array): void {
    const place = this.dice.below(list.length);
    const activity = list[place] ?? NONE;
    const before = this.mark(this.side.predecessors, activity);
    let low = place;
    while (low > 0 && this.marks[list[low - 1] ?? NONE] !== before) low--;
    const after = this.mark(this.side.successors, activity);
    let high = place;
    while (high < list.length - 1 && this.marks[list[high + 1] ?? NONE] !== after) high++;
    const target = low + this.dice.below(high - low + 1);
    if (target < place) list.copyWithin(target + 1, target, place);
    else list.copyWithin(place, place + 1, target + 1);
    list[target] = activity;
  }

  private mark(links: Links, activity: number): number {
    this.stamp++;
    for (let p = links.first[activity] ?? NONE; p < (links.first[activity + 1] ?? NONE); p++) {
      this.marks[links.list[p] ?? NONE] = this.stamp;
    }
    return this.stamp;
  }
}
