import { intAt } from '../../../base';
import type { Links, PlainNet } from '../plain-net';
import type { Clauses } from './clauses';
import type { Cuts } from './cuts';
import {
  BY_CAPACITY,
  BY_CLAUSE,
  BY_PAIR,
  BY_RELATIONSHIP,
  FIRST,
  KIND_BITS,
  LAST,
  type StartRanges,
} from './start-ranges';

/** No conflict; a clause is broken; an activity has no start left; a day is overfull. */
export const NO_CONFLICT = 0;
export const BROKEN_CLAUSE = 1;
export const EMPTY_RANGE = 2;
export const OVERFULL_DAY = 3;

/** Narrows the ranges until nothing follows any more or something contradicts. */
export class Propagation {
  /** What kind of conflict there is, and what it is about. */
  conflict = NO_CONFLICT;
  /** The clause, the day, or the side (twice the activity plus 1 for the last start) whose range became empty. */
  subject = -1;
  /** The limit that emptied the range and its reason. */
  limit = 0;
  reason = 0;
  /** Work done, counted in placements. */
  work = 0;
  private readonly net: PlainNet;
  /** Of each activity those that can never run beside it. */
  private readonly rivals: Links;
  private readonly ranges: StartRanges;
  private readonly clauses: Clauses;
  private readonly cuts: Cuts;
  private readonly isTouched: Uint8Array;
  private readonly holders: Int32Array;
  private next = 0;

  constructor(net: PlainNet, rivals: Links, ranges: StartRanges, clauses: Clauses, cuts: Cuts) {
    this.net = net;
    this.rivals = rivals;
    this.ranges = ranges;
    this.clauses = clauses;
    this.cuts = cuts;
    this.isTouched = new Uint8Array(net.count);
    this.holders = Int32Array.from(net.durations.keys()).filter(i => {
      const demands = net.demands.subarray(i * net.words, (i + 1) * net.words);
      return net.durations[i] !== 0 && demands.some(demand => demand !== 0);
    });
  }

  /** Forgets a conflict and what is still to be followed, once changes were taken back. */
  reset(): void {
    this.conflict = NO_CONFLICT;
    this.next = this.ranges.length;
    this.ranges.overloaded = -1;
    this.ranges.grownFrom = Infinity;
    this.ranges.grownTo = -Infinity;
    this.isTouched.fill(0);
  }

  /** Follows every change; false: a conflict. */
  run(): boolean {
    const { ranges } = this;
    if (ranges.overloaded >= 0) return this.fails(OVERFULL_DAY, ranges.overloaded);
    for (;;) {
      while (this.next < ranges.length) {
        if (!this.follow(this.next++)) return false;
      }
      if (!this.besideCompulsoryParts()) return false;
      if (this.next === ranges.length) return true;
    }
  }

  private fails(conflict: number, subject: number): false {
    this.conflict = conflict;
    this.subject = subject;
    return false;
  }

  private follow(change: number): boolean {
    const { ranges, cuts } = this;
    const side = intAt(ranges.sides, change);
    const activity = side >> 1;
    const before = intAt(ranges.before, change);
    const after = intAt(ranges.after, change);
    const offset = intAt(cuts.offsets, activity);
    this.isTouched[activity] = 1;
    this.work++;
    if ((side & 1) === FIRST) {
      for (let cut = offset + before; cut < offset + after; cut++) {
        if (intAt(this.clauses.heads, 2 * cut + 1) >= 0 && !this.visit(2 * cut + 1)) return false;
      }
      return this.pushSuccessors(activity, after) && this.behindRivals(activity, after);
    }
    for (let cut = offset + after; cut < offset + before; cut++) {
      if (intAt(this.clauses.heads, 2 * cut) >= 0 && !this.visit(2 * cut)) return false;
    }
    return this.pushPredecessors(activity, after) && this.beforeRivals(activity, after);
  }

  private pushSuccessors(activity: number, start: number): boolean {
    const { first, list } = this.net.successors;
    const moment = start + intAt(this.net.durations, activity);
    const reason = (activity << KIND_BITS) | BY_RELATIONSHIP;
    for (let s = intAt(first, activity); s < intAt(first, activity + 1); s++) {
      const other = intAt(list, s);
      if (moment > intAt(this.ranges.first, other) && !this.raiseFirst(other, moment, reason)) return false;
    }
    return true;
  }

  private pushPredecessors(activity: number, start: number): boolean {
    const { first, list } = this.net.predecessors;
    const reason = (activity << KIND_BITS) | BY_RELATIONSHIP;
    for (let p = intAt(first, activity); p < intAt(first, activity + 1); p++) {
      const other = intAt(list, p);
      const moment = start - intAt(this.net.durations, other);
      if (moment < intAt(this.ranges.last, other) && !this.lowerLast(other, moment, reason)) return false;
    }
    return true;
  }

  /** An activity that can no longer be over before a rival starts goes behind it. */
  private behindRivals(activity: number, start: number): boolean {
    const { first, list } = this.rivals;
    const { last } = this.ranges;
    const finish = start + intAt(this.net.durations, activity);
    for (let r = intAt(first, activity); r < intAt(first, activity + 1); r++) {
      const rival = intAt(list, r);
      if (finish > intAt(last, rival) && !this.putBehind(rival, activity)) return false;
    }
    return true;
  }

  /** A rival that can no longer be over before an activity starts goes behind it. */
  private beforeRivals(activity: number, latest: number): boolean {
    const { first, list } = this.rivals;
    const { durations } = this.net;
    for (let r = intAt(first, activity); r < intAt(first, activity + 1); r++) {
      const rival = intAt(list, r);
      const finish = intAt(this.ranges.first, rival) + intAt(durations, rival);
      if (finish > latest && !this.putBehind(activity, rival)) return false;
    }
    return true;
  }

  private putBehind(before: number, behind: number): boolean {
    const { first, last } = this.ranges;
    const duration = intAt(this.net.durations, before);
    const start = intAt(first, before) + duration;
    if (start > intAt(first, behind) && !this.raiseFirst(behind, start, (before << KIND_BITS) | BY_PAIR)) {
      return false;
    }
    const latest = intAt(last, behind) - duration;
    return latest >= intAt(last, before) || this.lowerLast(before, latest, (behind << KIND_BITS) | BY_PAIR);
  }

  /** Lets an activity start at a moment or later; false: a conflict. */
  raiseFirst(activity: number, moment: number, reason: number): boolean {
    const { ranges } = this;
    if (moment > intAt(ranges.last, activity)) return this.empties(2 * activity + FIRST, moment, reason);
    ranges.raiseFirst(activity, moment, reason);
    return ranges.overloaded < 0 || this.fails(OVERFULL_DAY, ranges.overloaded);
  }

  /** Lets an activity start by a moment; false: a conflict. */
  lowerLast(activity: number, moment: number, reason: number): boolean {
    const { ranges } = this;
    if (moment < intAt(ranges.first, activity)) return this.empties(2 * activity + LAST, moment, reason);
    ranges.lowerLast(activity, moment, reason);
    return ranges.overloaded < 0 || this.fails(OVERFULL_DAY, ranges.overloaded);
  }

  private empties(side: number, moment: number, reason: number): false {
    this.limit = moment;
    this.reason = reason;
    return this.fails(EMPTY_RANGE, side);
  }

  /** Makes a literal hold; false: a conflict. */
  hold(literal: number, reason: number): boolean {
    const cut = literal >> 1;
    const activity = intAt(this.cuts.activityOf, cut);
    const moment = intAt(this.cuts.momentOf, cut);
    return (literal & 1) === 1
      ? this.lowerLast(activity, moment, reason)
      : this.raiseFirst(activity, moment + 1, reason);
  }

  /** Whether a literal holds (1), cannot hold (-1) or is open (0). */
  valueOf(literal: number): number {
    const cut = literal >> 1;
    const activity = intAt(this.cuts.activityOf, cut);
    const moment = intAt(this.cuts.momentOf, cut);
    const isBy = intAt(this.ranges.last, activity) <= moment;
    if (!isBy && intAt(this.ranges.first, activity) <= moment) return 0;
    return isBy === ((literal & 1) === 1) ? 1 : -1;
  }

  /** Looks at the clauses that watch a literal which can no longer hold. */
  private visit(failed: number): boolean {
    const { clauses } = this;
    const { next, starts, literals, heads } = clauses;
    let from = -1;
    let watch = intAt(heads, failed);
    while (watch >= 0) {
      const following = intAt(next, watch);
      this.work++;
      const clause = watch >> 1;
      const start = intAt(starts, clause);
      const own = start + (watch & 1);
      const other = intAt(literals, start + 1 - (watch & 1));
      const value = this.valueOf(other);
      const free = value === 1 ? -1 : this.freeLiteral(start + 2, intAt(starts, clause + 1));
      if (free >= 0) {
        const literal = intAt(literals, free);
        literals[free] = failed;
        literals[own] = literal;
        next[watch] = intAt(heads, literal);
        heads[literal] = watch;
        if (from < 0) heads[failed] = following;
        else next[from] = following;
      } else {
        if (value === -1) return this.fails(BROKEN_CLAUSE, clause);
        if (value === 0 && !this.hold(other, (clause << KIND_BITS) | BY_CLAUSE)) return false;
        from = watch;
      }
      watch = following;
    }
    return true;
  }

  private freeLiteral(from: number, to: number): number {
    const { literals } = this.clauses;
    for (let k = from; k < to; k++) if (this.valueOf(intAt(literals, k)) >= 0) return k;
    return -1;
  }

  /** Moves activities off the days that compulsory parts fill. */
  private besideCompulsoryParts(): boolean {
    const { ranges, net, isTouched } = this;
    const { first, last } = ranges;
    const from = ranges.grownFrom;
    const to = ranges.grownTo;
    ranges.grownFrom = Infinity;
    ranges.grownTo = -Infinity;
    // To look at four takes about as long as to place one.
    this.work += this.holders.length >> 2;
    for (const i of this.holders) {
      const isMoved = isTouched[i] === 1;
      isTouched[i] = 0;
      const earliest = intAt(first, i);
      const latest = intAt(last, i);
      if (earliest === latest) continue;
      const duration = intAt(net.durations, i);
      if ((isMoved || (earliest < to && earliest + duration > from)) && !this.moveFirst(i, duration))
        return false;
      if ((isMoved || (latest < to && latest + duration > from)) && !this.moveLast(i, duration)) return false;
    }
    return true;
  }

  private moveFirst(i: number, duration: number): boolean {
    const { first, last } = this.ranges;
    for (;;) {
      const start = intAt(first, i);
      this.work++;
      const day = this.ranges.lastFullDay(i, start, Math.min(intAt(last, i), start + duration));
      if (day < 0) return true;
      if (!this.raiseFirst(i, day + 1, (day << KIND_BITS) | BY_CAPACITY)) return false;
    }
  }

  private moveLast(i: number, duration: number): boolean {
    const { first, last } = this.ranges;
    for (;;) {
      const start = intAt(last, i);
      this.work++;
      const day = this.ranges.firstFullDay(i, Math.max(start, intAt(first, i) + duration), start + duration);
      if (day < 0) return true;
      if (!this.lowerLast(i, day - duration, (day << KIND_BITS) | BY_CAPACITY)) return false;
    }
  }
}
