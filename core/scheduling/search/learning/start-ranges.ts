import { BugError, intAt } from '../../../base';
import type { Windows } from '../bounds/windows';
import type { PlainNet } from '../plain-net';

/** Why a range was narrowed: a decision, or one of the kinds below with its number in the upper bits. */
export const DECISION = -1;
export const BY_CLAUSE = 0;
export const BY_RELATIONSHIP = 1;
export const BY_CAPACITY = 2;
export const BY_PAIR = 3;

/** Bits that tell the kind of a reason. */
export const KIND_BITS = 3;

/** The kind of a reason. */
export const kindOf = (reason: number): number => reason & ((1 << KIND_BITS) - 1);

/** The side of a range: its first or its last start. */
export const FIRST = 0;
export const LAST = 1;

/**
 * The range in which each activity may start, what the compulsory parts leave of the capacities, and a trail of all
 * changes with their reasons, so that they can be taken back in reverse.
 */
export class StartRanges {
  /** First and last start of each activity. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** What compulsory parts leave, `words` entries a day. */
  readonly free: Int32Array;
  /** The trail: twice the activity plus the side, the limit before and after, the reason, the level. */
  readonly sides: Int32Array;
  readonly before: Int32Array;
  readonly after: Int32Array;
  readonly reasons: Int32Array;
  readonly levels: Int32Array;
  /** The change of the same side before that one; -1: none. */
  readonly previous: Int32Array;
  /** The latest change of each side; -1: none. */
  readonly latest: Int32Array;
  length = 0;
  level = 0;
  /** The last day on which a change has exceeded a capacity; -1: none. */
  overloaded = -1;
  /** Days whose compulsory parts grew since they were last read. */
  grownFrom = Infinity;
  grownTo = -Infinity;
  private readonly levelStarts: number[] = [];
  private readonly net: PlainNet;

  constructor(net: PlainNet, windows: Windows) {
    this.net = net;
    const { count, words } = net;
    this.first = windows.from.slice();
    this.last = windows.to.map((finish, i) => finish - intAt(net.durations, i));
    this.free = new Int32Array((windows.end + 1) * words);
    for (let slot = 0; slot < this.free.length; slot++) this.free[slot] = intAt(net.freeDay, slot % words);
    // Each change narrows a range by a day at least.
    const most = this.first.reduce((sum, start, i) => sum + intAt(this.last, i) - start, 0) + 1;
    [this.sides, this.before, this.after] = [
      new Int32Array(most),
      new Int32Array(most),
      new Int32Array(most),
    ];
    this.reasons = new Int32Array(most);
    this.levels = new Int32Array(most);
    this.previous = new Int32Array(most);
    this.latest = new Int32Array(2 * count).fill(-1);
    for (let i = 0; i < count; i++) this.hold(i, intAt(this.last, i), this.finishOf(i), 1);
  }

  private finishOf(activity: number): number {
    return intAt(this.first, activity) + intAt(this.net.durations, activity);
  }

  /** Opens a level for a decision. */
  openLevel(): void {
    this.levelStarts.push(this.length);
    this.level++;
  }

  /** Where the changes of a level begin. */
  startOf(level: number): number {
    const start = this.levelStarts[level - 1];
    if (start === undefined) throw new BugError(`There is no level ${level}`);
    return start;
  }

  /** Forgets the levels above one whose changes are already taken back. */
  closeLevels(level: number): void {
    this.levelStarts.length = level;
    this.level = level;
  }

  /** Narrows a range to start at a moment or later. The moment must lie inside. */
  raiseFirst(activity: number, moment: number, reason: number): void {
    const old = intAt(this.first, activity);
    const duration = intAt(this.net.durations, activity);
    this.note(2 * activity + FIRST, old, moment, reason);
    this.first[activity] = moment;
    this.hold(activity, Math.max(intAt(this.last, activity), old + duration), moment + duration, 1);
  }

  /** Narrows a range to start by a moment. The moment must lie inside. */
  lowerLast(activity: number, moment: number, reason: number): void {
    const old = intAt(this.last, activity);
    this.note(2 * activity + LAST, old, moment, reason);
    this.last[activity] = moment;
    this.hold(activity, moment, Math.min(old, this.finishOf(activity)), 1);
  }

  private note(side: number, before: number, after: number, reason: number): void {
    const at = this.length++;
    this.sides[at] = side;
    this.before[at] = before;
    this.after[at] = after;
    this.reasons[at] = reason;
    this.levels[at] = this.level;
    this.previous[at] = intAt(this.latest, side);
    this.latest[side] = at;
  }

  /** Takes the latest change back. */
  undo(): void {
    const at = --this.length;
    const side = intAt(this.sides, at);
    const activity = side >> 1;
    const before = intAt(this.before, at);
    const after = intAt(this.after, at);
    const duration = intAt(this.net.durations, activity);
    this.latest[side] = intAt(this.previous, at);
    if ((side & 1) === FIRST) {
      this.hold(activity, Math.max(intAt(this.last, activity), before + duration), after + duration, -1);
      this.first[activity] = before;
    } else {
      this.hold(activity, after, Math.min(before, this.finishOf(activity)), -1);
      this.last[activity] = before;
    }
  }

  /** Makes what has changed so far unconditional: it can no longer be taken back. */
  settle(): void {
    for (let at = 0; at < this.length; at++) this.latest[intAt(this.sides, at)] = -1;
    this.length = 0;
  }

  /** Takes (1) or gives back (-1) the demand of an activity on the days from one to before another. */
  private hold(activity: number, from: number, to: number, sign: number): void {
    if (to <= from) return;
    const { demands, guards, words } = this.net;
    const { free } = this;
    for (let word = 0; word < words; word++) {
      const demand = Math.imul(intAt(demands, activity * words + word), sign);
      const guard = intAt(guards, word);
      if (demand === 0) continue;
      for (let day = from; day < to; day++) {
        const left = (intAt(free, day * words + word) - demand) | 0;
        free[day * words + word] = left;
        if ((left & guard) !== guard) this.overloaded = day;
      }
    }
    if (sign < 0) return;
    if (from < this.grownFrom) this.grownFrom = from;
    if (to > this.grownTo) this.grownTo = to;
  }

  /** The last day from one to before another on which the activity does not fit beside compulsory parts; -1: none. */
  lastFullDay(activity: number, from: number, to: number): number {
    const { demands, guards, words } = this.net;
    const { free } = this;
    if (words === 1) {
      const demand = intAt(demands, activity);
      const guard = intAt(guards, 0) | 0;
      for (let day = to - 1; day >= from; day--) {
        if (((intAt(free, day) - demand) & guard) !== guard) return day;
      }
      return -1;
    }
    for (let day = to - 1; day >= from; day--) if (this.isFull(activity, day)) return day;
    return -1;
  }

  /** The first such day. */
  firstFullDay(activity: number, from: number, to: number): number {
    for (let day = from; day < to; day++) if (this.isFull(activity, day)) return day;
    return -1;
  }

  private isFull(activity: number, day: number): boolean {
    const { demands, guards, words } = this.net;
    for (let word = 0; word < words; word++) {
      const guard = intAt(guards, word);
      const left = (intAt(this.free, day * words + word) - intAt(demands, activity * words + word)) | 0;
      if ((left & guard) !== guard) return true;
    }
    return false;
  }
}
