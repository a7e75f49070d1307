import { at, intAt } from '../../base';
import { type Dice } from './dice';
import type { Individual } from './individual';
import type { Links } from './plain-net';
import { randomOrder, Ready } from './random-order';
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
  private readonly marks: Int32Array;
  private readonly sorted: Int32Array;
  private stamp = 0;
  private readonly tieOrders: readonly Int32Array[];
  private readonly side: Side;
  private readonly dice: Dice;

  constructor(side: Side, dice: Dice, tieOrders: number, ready = new Ready(side)) {
    this.side = side;
    this.dice = dice;
    this.counts = new Int32Array(side.span + 8);
    this.marks = new Int32Array(side.count);
    this.sorted = new Int32Array(side.count);
    this.tieOrders = Array.from({ length: tieOrders }, () => randomOrder(side, dice, ready));
  }

  /** The activities of a schedule by falling finish, equal ones in one of the random orders: its `order`. */
  sort(parent: Individual): void {
    const { counts } = this;
    const { finishes, last, low, order } = parent;
    const ties = at(this.tieOrders, this.dice.below(this.tieOrders.length));
    const span = last - low + 1;
    counts.fill(0, 0, span + 1);
    for (let i = 0; i < finishes.length; i++) {
      const place = (last - intAt(finishes, i) + 1) | 0;
      counts[place] = (intAt(counts, place) + 1) | 0;
    }
    for (let key = 1, sum = 0; key <= span; key++) counts[key] = sum = (sum + intAt(counts, key)) | 0;
    for (let k = 0; k < ties.length; k++) {
      const activity = intAt(ties, k);
      const key = (last - intAt(finishes, activity)) | 0;
      const place = intAt(counts, key);
      order[place] = activity;
      counts[key] = place + 1;
    }
  }

  /** The list of a single sorted schedule. */
  fromOne(parent: Individual, list: Int32Array): void {
    if (this.side.needsRepair) this.repair(parent.order, list);
    else list.set(parent.order);
  }

  /**
   * The list of a child of two sorted schedules: the activities that finish inside the block of `keeper` stay
   * together in its order; those after and before the block follow the order of `other`.
   * @source Debels and Vanhoucke, Lecture Notes in Computer Science 3483 (2005) 378-387 (bi-population).
   */
  fromTwo(keeper: Individual, other: Individual, block: Block, list: Int32Array): void {
    const target = this.side.needsRepair ? this.sorted : list;
    const { finishes } = keeper;
    const own = keeper.order;
    const rest = other.order;
    const { from, to } = block;
    let behind = 0;
    while (behind < own.length && intAt(finishes, intAt(own, behind)) > to) behind++;
    let place = behind;
    for (; place < own.length; place++) {
      const activity = intAt(own, place);
      if (intAt(finishes, activity) <= from) break;
      target[place] = activity;
    }
    behind = 0;
    for (let k = 0; k < rest.length; k++) {
      const activity = intAt(rest, k);
      const finish = intAt(finishes, activity);
      if (finish > to) target[behind++] = activity;
      else if (finish <= from) target[place++] = activity;
    }
    if (this.side.needsRepair) this.repair(target, list);
  }

  /** Copies an order, pulling the predecessors of an activity forward where they stand behind it. */
  private repair(sorted: Int32Array, list: Int32Array): void {
    const done = ++this.stamp;
    let filled = 0;
    const put = (activity: number): void => {
      if (this.marks[activity] === done) return;
      this.marks[activity] = done;
      const { first, list: before } = this.side.predecessors;
      for (let p = intAt(first, activity); p < intAt(first, activity + 1); p++) put(intAt(before, p));
      list[filled++] = activity;
    };
    for (const activity of sorted) put(activity);
  }

  /** Moves one activity, drawn at random, somewhere else between its predecessors and successors. */
  shiftOne(list: Int32Array): void {
    const place = this.dice.below(list.length);
    const activity = intAt(list, place);
    const before = this.mark(this.side.predecessors, activity);
    let low = place;
    while (low > 0 && this.marks[intAt(list, low - 1)] !== before) low--;
    const after = this.mark(this.side.successors, activity);
    let high = place;
    while (high < list.length - 1 && this.marks[intAt(list, high + 1)] !== after) high++;
    const target = low + this.dice.below(high - low + 1);
    if (target < place) list.copyWithin(target + 1, target, place);
    else list.copyWithin(place, place + 1, target + 1);
    list[target] = activity;
  }

  private mark(links: Links, activity: number): number {
    this.stamp++;
    for (let p = intAt(links.first, activity); p < intAt(links.first, activity + 1); p++) {
      this.marks[intAt(links.list, p)] = this.stamp;
    }
    return this.stamp;
  }
}
