import { intAt } from '../../base';
import type { DatedNet } from './dated-net';
import { datedPass, restore } from './dated-pass';
import type { Individual } from './individual';
import { LagPasses } from './lag-pass';
import type { Links } from './plain-net';
import type { Side } from './side';
import { tailsOf } from './tails';

/** The finish from which right-justified schedules reach back: the best one known, in forward moments. */
export interface Anchor {
  moment: number;
  late: number;
}

/**
 * A network with calendars, dates and lags in one time direction. Both directions keep absolute dates: a
 * reversed pass starts at the anchor and may reach before the first day, which then counts in the objective.
 */
export class DatedSide implements Side {
  readonly count: number;
  readonly predecessors: Links;
  readonly successors: Links;
  readonly weights: Float64Array;
  readonly priorities: Int32Array;
  readonly span: number;
  readonly needsRepair: boolean;
  private readonly net: DatedNet;
  private readonly isForward: boolean;
  private readonly anchor: Anchor;
  private readonly free: Int32Array;
  private readonly lags: LagPasses;
  /** Whether the objective looks beyond the last finish, and the first moment by which anything is due. */
  private readonly hasDates: boolean;
  private readonly firstDue: number;

  constructor(net: DatedNet, isForward: boolean, anchor: Anchor) {
    this.net = net;
    this.isForward = isForward;
    this.anchor = anchor;
    this.count = net.count;
    this.predecessors = net.predecessors;
    this.successors = net.successors;
    this.weights = net.weights;
    this.span = net.slots;
    this.needsRepair = net.needsRepair;
    this.priorities = tailsOf(net).map(tail => -tail);
    this.free = net.template.slice();
    this.lags = new LagPasses(net, this.free);
    this.hasDates = net.after.some(days => days > 0);
    this.firstDue = net.due.reduce((first, moment) => Math.min(first, moment), net.slots);
  }

  decode(list: Int32Array, made: Individual): number {
    const { net, free, isForward, anchor } = this;
    const floor = isForward ? net.base : Math.max(0, net.slots - anchor.moment);
    made.late = 0;
    const cost = net.hasMaximums
      ? this.lags.pass(list, floor, made)
      : datedPass(net, free, list, floor, made);
    this.measure(made, floor);
    restore(net, free, floor, made.last);
    if (isForward && (made.late < anchor.late || (made.late === anchor.late && made.last < anchor.moment))) {
      anchor.moment = made.last;
      anchor.late = made.late;
    }
    return cost;
  }

  /** The last finish, what lies beyond it on account of dates, and the days late. */
  private measure(made: Individual, floor: number): void {
    const { due, after } = this.net;
    const { finishes } = made;
    let last = floor;
    for (let i = 0; i < finishes.length; i++) last = Math.max(last, intAt(finishes, i)) | 0;
    let reach = last;
    let late = 0;
    if (this.hasDates || last > this.firstDue) {
      for (let i = 0; i < finishes.length; i++) {
        const finish = intAt(finishes, i);
        reach = Math.max(reach, finish + intAt(after, i)) | 0;
        late += Math.max(0, finish - intAt(due, i));
      }
    }
    made.late += late;
    made.low = floor;
    made.last = last;
    made.beyond = reach - last;
  }
}
