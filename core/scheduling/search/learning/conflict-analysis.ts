import { BugError, intAt } from '../../../base';
import type { BoundNet } from '../bounds/bound-net';
import type { Clauses } from './clauses';
import type { Cuts } from './cuts';
import { BROKEN_CLAUSE, EMPTY_RANGE, type Propagation } from './propagation';
import { FullDays, type Premises } from './reasons';
import {
  BY_CAPACITY,
  BY_CLAUSE,
  BY_PAIR,
  BY_RELATIONSHIP,
  FIRST,
  KIND_BITS,
  kindOf,
  LAST,
  type StartRanges,
} from './start-ranges';
import type { UrgentCuts } from './urgent-cuts';

/**
 * Learns a clause from a conflict: follows the reasons back to the first limit of the present level that alone, with
 * limits of levels below, leads to it.
 * @source Marques-Silva and Sakallah, IEEE Transactions on Computers 48 (1999) 506-521 (clause learning); Schutt,
 *   Feydt, Stuckey and Wallace, Journal of Scheduling 16 (2013) 273-289 (for project scheduling).
 */
export class ConflictAnalysis implements Premises {
  /** The learned literals, the one to hold next first; so many. */
  readonly learned: Int32Array;
  length = 0;
  /** The level to go back to, and from how many levels the literals come. */
  backLevel = 0;
  spread = 0;
  /** Conflicts so far. */
  conflicts = 0;
  /** Work done, counted in placements. */
  work = 0;
  private readonly needs: Int32Array;
  private readonly isNeeded: Uint8Array;
  private readonly needed: Int32Array;
  private neededCount = 0;
  /** What a change of the present level must have reached, by its place on the trail. */
  private readonly reached: Int32Array;
  private readonly isOpen: Uint8Array;
  private openCount = 0;
  private readonly levelMarks: Int32Array;
  private readonly days: FullDays;
  private readonly net: BoundNet;
  private readonly ranges: StartRanges;
  private readonly clauses: Clauses;
  private readonly cuts: Cuts;
  private readonly urgent: UrgentCuts;

  constructor(net: BoundNet, ranges: StartRanges, clauses: Clauses, cuts: Cuts, urgent: UrgentCuts) {
    this.net = net;
    this.ranges = ranges;
    this.clauses = clauses;
    this.cuts = cuts;
    this.urgent = urgent;
    this.days = new FullDays(net, ranges);
    this.learned = new Int32Array(2 * net.count + 1);
    this.needs = new Int32Array(2 * net.count);
    this.isNeeded = new Uint8Array(2 * net.count);
    this.needed = new Int32Array(2 * net.count);
    this.reached = new Int32Array(ranges.sides.length);
    this.isOpen = new Uint8Array(ranges.sides.length);
    this.levelMarks = new Int32Array(ranges.sides.length + 2);
  }

  /** Takes changes back up to the one learned about, and fills in what was learned. */
  learn(conflict: Propagation): void {
    const { ranges } = this;
    this.conflicts++;
    this.neededCount = 0;
    this.openCount = 0;
    this.explainConflict(conflict);
    for (;;) {
      const at = ranges.length - 1;
      if (at < 0) throw new BugError('A conflict rests on nothing of its level');
      if (this.isOpen[at] === 1) {
        this.isOpen[at] = 0;
        if (--this.openCount === 0) break;
        const side = intAt(ranges.sides, at);
        const reason = intAt(ranges.reasons, at);
        this.takeBack(at);
        this.explain(side, intAt(this.reached, at), reason);
      } else this.takeBack(at);
    }
    this.conclude(ranges.length - 1);
    this.urgent.fade();
  }

  /** Takes the latest change back; its cuts may be decided again. */
  private takeBack(at: number): void {
    const { ranges, cuts } = this;
    const side = intAt(ranges.sides, at);
    const offset = intAt(cuts.offsets, side >> 1);
    const before = intAt(ranges.before, at);
    const after = intAt(ranges.after, at);
    this.urgent.returnAll(offset + Math.min(before, after), offset + Math.max(before, after));
    ranges.undo();
  }

  /** Takes back everything above a level. */
  backTo(level: number): void {
    const { ranges } = this;
    if (level >= ranges.level) return;
    const start = ranges.startOf(level + 1);
    while (ranges.length > start) this.takeBack(ranges.length - 1);
    ranges.closeLevels(level);
  }

  private explainConflict(conflict: Propagation): void {
    const { conflict: kind, subject, limit, reason } = conflict;
    if (kind === BROKEN_CLAUSE) this.explainClause(subject, -1);
    else if (kind === EMPTY_RANGE) {
      this.explain(subject, limit, reason);
      if ((subject & 1) === FIRST) this.startsBy(subject >> 1, limit - 1);
      else this.startsFrom(subject >> 1, limit + 1);
    } else this.days.explain(subject, -1, this);
  }

  /** Names what a limit of a side follows from. */
  private explain(side: number, limit: number, reason: number): void {
    const activity = side >> 1;
    const kind = kindOf(reason);
    const about = reason >> KIND_BITS;
    const { durations } = this.net;
    if (kind === BY_CLAUSE) this.explainClause(about, side);
    else if (kind === BY_RELATIONSHIP) {
      if ((side & 1) === FIRST) this.startsFrom(about, limit - intAt(durations, about));
      else this.startsBy(about, limit + intAt(durations, activity));
    } else if (kind === BY_CAPACITY) {
      if ((side & 1) === FIRST) this.startsFrom(activity, about - intAt(durations, activity) + 1);
      else this.startsBy(activity, about);
      this.days.explain(about, activity, this);
    } else if (kind === BY_PAIR) {
      // The one behind could not be over before the other starts, so it starts when that one is over.
      const isFirst = (side & 1) === FIRST;
      const [before, behind] = isFirst ? [about, activity] : [activity, about];
      if (isFirst) this.startsFrom(before, limit - intAt(durations, before));
      else this.startsBy(behind, limit + intAt(durations, before));
      const earliest = intAt(this.ranges.first, behind);
      this.startsFrom(behind, earliest);
      this.startsBy(before, earliest + intAt(durations, behind) - 1);
    }
  }

  /** All literals of a clause but the one that follows (of `side`) fail: their opposites are the premises. */
  private explainClause(clause: number, side: number): void {
    const { starts, literals } = this.clauses;
    this.clauses.use(clause, this.conflicts);
    let isFound = side < 0;
    for (let k = intAt(starts, clause); k < intAt(starts, clause + 1); k++) {
      const literal = intAt(literals, k);
      const cut = literal >> 1;
      const activity = intAt(this.cuts.activityOf, cut);
      const moment = intAt(this.cuts.momentOf, cut);
      if (!isFound && 2 * activity + (literal & 1) === side) {
        isFound = true;
        continue;
      }
      if ((literal & 1) === 1) this.startsFrom(activity, moment + 1);
      else this.startsBy(activity, moment);
    }
  }

  startsFrom(activity: number, moment: number): void {
    const { ranges } = this;
    let at = intAt(ranges.latest, 2 * activity + FIRST);
    while (at >= 0 && intAt(ranges.before, at) >= moment) at = intAt(ranges.previous, at);
    if (at < 0 || intAt(ranges.after, at) < moment) return;
    this.urgent.raise(intAt(this.cuts.offsets, activity) + moment - 1);
    this.require(at, 2 * activity + FIRST, moment);
  }

  startsBy(activity: number, moment: number): void {
    const { ranges } = this;
    let at = intAt(ranges.latest, 2 * activity + LAST);
    while (at >= 0 && intAt(ranges.before, at) <= moment) at = intAt(ranges.previous, at);
    if (at < 0 || intAt(ranges.after, at) > moment) return;
    this.urgent.raise(intAt(this.cuts.offsets, activity) + moment);
    this.require(at, 2 * activity + LAST, moment);
  }

  private require(at: number, side: number, moment: number): void {
    this.work++;
    if (intAt(this.ranges.levels, at) === this.ranges.level) {
      if (this.isOpen[at] === 1 && !isStronger(side, moment, intAt(this.reached, at))) return;
      if (this.isOpen[at] === 0) this.openCount++;
      this.isOpen[at] = 1;
      this.reached[at] = moment;
      return;
    }
    if (this.isNeeded[side] === 0) {
      this.isNeeded[side] = 1;
      this.needed[this.neededCount++] = side;
      this.needs[side] = moment;
    } else if (isStronger(side, moment, intAt(this.needs, side))) this.needs[side] = moment;
  }

  /** Writes the clause: not the limit at a place on the trail, or not one of the needed ones. */
  private conclude(at: number): void {
    const { ranges } = this;
    const ownSide = intAt(ranges.sides, at);
    const own = intAt(this.reached, at);
    if (this.isNeeded[ownSide] === 0) this.needed[this.neededCount++] = ownSide;
    this.isNeeded[ownSide] = 1;
    this.needs[ownSide] = own;
    this.learned[0] = this.opposite(ownSide, own);
    this.length = 1;
    this.backLevel = 0;
    this.spread = 1;
    let deepest = 0;
    for (let k = 0; k < this.neededCount; k++) {
      const side = intAt(this.needed, k);
      const moment = intAt(this.needs, side);
      if (side === ownSide) continue;
      const place = this.placeOf(side, moment);
      if (this.isImplied(side, moment, place)) continue;
      const level = intAt(ranges.levels, place);
      if (this.levelMarks[level] !== this.conflicts) this.spread++;
      this.levelMarks[level] = this.conflicts;
      if (level > this.backLevel) {
        this.backLevel = level;
        deepest = this.length;
      }
      this.learned[this.length++] = this.opposite(side, moment);
    }
    if (this.length > 1) {
      const literal = intAt(this.learned, 1);
      this.learned[1] = intAt(this.learned, deepest);
      this.learned[deepest] = literal;
    }
    for (let k = 0; k < this.neededCount; k++) this.isNeeded[intAt(this.needed, k)] = 0;
  }

  /** The change that brought a limit of a side about; -1: none, it holds in any case. */
  private placeOf(side: number, moment: number): number {
    const { ranges } = this;
    let at = intAt(ranges.latest, side);
    while (at >= 0 && !isStronger(side, moment, intAt(ranges.before, at))) at = intAt(ranges.previous, at);
    return at;
  }

  private opposite(side: number, moment: number): number {
    return (side & 1) === FIRST
      ? this.cuts.startsBy(side >> 1, moment - 1)
      : this.cuts.startsFrom(side >> 1, moment + 1);
  }

  /** Whether a needed limit follows from others that are needed too and came before it. */
  private isImplied(side: number, moment: number, at: number): boolean {
    const reason = intAt(this.ranges.reasons, at);
    const about = reason >> KIND_BITS;
    const kind = kindOf(reason);
    const { durations } = this.net;
    if (kind === BY_RELATIONSHIP) {
      return (side & 1) === FIRST
        ? this.isKnown(2 * about + FIRST, moment - intAt(durations, about), at)
        : this.isKnown(2 * about + LAST, moment + intAt(durations, side >> 1), at);
    }
    return kind === BY_CLAUSE && this.areKnown(about, side, at);
  }

  private areKnown(clause: number, side: number, at: number): boolean {
    const { starts, literals } = this.clauses;
    for (let k = intAt(starts, clause); k < intAt(starts, clause + 1); k++) {
      const literal = intAt(literals, k);
      const cut = literal >> 1;
      const other = 2 * intAt(this.cuts.activityOf, cut) + (literal & 1);
      if (other === side) continue;
      const moment = intAt(this.cuts.momentOf, cut);
      const isKnown =
        (literal & 1) === 1
          ? this.isKnown((other & ~1) | FIRST, moment + 1, at)
          : this.isKnown(other | LAST, moment, at);
      if (!isKnown) return false;
    }
    return true;
  }

  /** Whether a limit never depends on a decision, or is needed anyway and came before a place on the trail. */
  private isKnown(side: number, moment: number, at: number): boolean {
    const place = this.placeOf(side, moment);
    if (place < 0) return true;
    return (
      place < at &&
      this.isNeeded[side] === 1 &&
      !isStronger(side, moment, intAt(this.needs, side)) &&
      this.placeOf(side, intAt(this.needs, side)) < at
    );
  }
}

/** Whether a limit of the side says more than another. */
function isStronger(side: number, moment: number, other: number): boolean {
  return (side & 1) === FIRST ? moment > other : moment < other;
}
