import { intAt } from '../../../base';
import type { BoundNet } from '../bounds/bound-net';
import { isRefuted } from '../bounds/destructive';
import { incompatiblePairs } from '../bounds/pairs';
import { finishOf, type DatedNet } from '../dated-net';
import { earliestTimes, type Earliest, type Orders } from '../propagate';
import { firstConflict, type Conflict } from './conflict';

/** What an exact search reports. */
export interface ExactOutcome {
  /** Whether everything was searched: the best found is optimal, or nothing exists. */
  readonly isComplete: boolean;
  /** Cost in schedules. */
  readonly spent: number;
}

/** The allowance of an exact search and where its schedules go. */
export interface ExactTask {
  /** Schedules it may spend. */
  readonly limit: number;
  /** Only schedules whose last finish (a forward moment) is smaller are wanted. */
  readonly below: number;
  readonly shouldStop: () => boolean;
  /** Demands and durations without relationships, where capacities are constant and every day is a work day. */
  readonly bounds: BoundNet | null;
  readonly found: (earliest: Earliest, last: number) => void;
}

/**
 * Exact branch and bound for networks with calendars, dates, windows and minimum and maximum lags. All activities
 * stand at their earliest times; on the first day on which a capacity is exceeded, a smallest set of activities that
 * exceeds it is taken apart. When the set could never run at once, each branch puts one behind another. Otherwise
 * one of them must start later, since none of them can be over by then: each branch delays one beyond the day and
 * keeps the ones before it from being so delayed.
 * @source after Demeulemeester and Herroelen, Management Science 38 (1992) 1803-1818 (delaying alternatives).
 */
export class DelaySearch {
  private readonly forward: DatedNet;
  private readonly backward: DatedNet;
  private readonly task: ExactTask;
  private readonly pairs: Int32Array;
  private below: number;
  private spent = 0;
  private isCut = false;

  constructor(nets: readonly [DatedNet, DatedNet], task: ExactTask) {
    this.forward = nets[0];
    this.backward = nets[1];
    this.task = task;
    this.below = task.below;
    this.pairs = task.bounds ? incompatiblePairs(task.bounds) : new Int32Array(0);
  }

  run(): ExactOutcome {
    this.branch(this.forward.release, this.forward.due, []);
    return { isComplete: !this.isCut, spent: this.spent };
  }

  private branch(release: Int32Array, due: Int32Array, orders: Orders): void {
    if (this.spent >= this.task.limit || this.task.shouldStop()) {
      this.isCut = true;
      return;
    }
    const limits = due.map(moment => Math.min(moment, this.below - 1));
    const earliest = this.propagate(release, limits, orders);
    if (!earliest || !this.hasRoom(earliest, limits)) return;
    const conflict = firstConflict(this.forward, earliest);
    if (!conflict) {
      this.below = earliest.finishes.reduce((last, finish) => Math.max(last, finish), 0);
      this.task.found(earliest, this.below);
      return;
    }
    if (conflict.isLasting) this.orderEach(conflict, earliest.starts, limits, orders);
    else this.delayEach(conflict, earliest.starts, limits, orders);
  }

  /** One of the set must be finished before another starts: every pair is tried. */
  private orderEach(conflict: Conflict, release: Int32Array, due: Int32Array, orders: Orders): void {
    for (const first of conflict.activities) {
      for (const second of conflict.activities) {
        if (first !== second) this.branch(release, due, [...orders, [first, second]]);
      }
    }
  }

  private delayEach(conflict: Conflict, release: Int32Array, due: Int32Array, orders: Orders): void {
    const kept = due.slice();
    for (const activity of conflict.activities) {
      if (intAt(this.forward.fixed, activity) >= 0) continue;
      const later = release.slice();
      later[activity] = conflict.day + 1;
      this.branch(later, kept, orders);
      kept[activity] = Math.min(intAt(kept, activity), this.finishWhenStartedBy(activity, conflict.day));
    }
  }

  /** Earliest times under the limits, with the latest finishes pulled in from behind; null when nothing fits. */
  private propagate(release: Int32Array, due: Int32Array, orders: Orders): Earliest | null {
    const { forward, backward } = this;
    this.spent += 2;
    const earliest = earliestTimes({ ...forward, release }, forward.base, due, orders);
    if (earliest.broken >= 0) return null;
    const mirrored = { ...backward, release: due.map(moment => forward.slots - moment) };
    const limits = earliest.starts.map(start => forward.slots - start);
    const turned = orders.map(([first, second]) => [second, first] as const);
    const latest = earliestTimes(mirrored, 0, limits, turned);
    if (latest.broken >= 0) return null;
    for (let i = 0; i < due.length; i++) due[i] = forward.slots - intAt(latest.starts, i);
    return earliest;
  }

  /** Whether the rules for constant capacities find no contradiction; what they learn narrows the limits. */
  private hasRoom(earliest: Earliest, due: Int32Array): boolean {
    const { bounds } = this.task;
    if (!bounds) return true;
    const { base } = this.forward;
    const to = due.map(moment => moment - base);
    const end = to.reduce((last, moment) => Math.max(last, moment), 0);
    const windows = { from: earliest.starts.map(start => start - base), to, end, moves: 0 };
    if (isRefuted(bounds, windows, this.pairs)) return false;
    for (let i = 0; i < due.length; i++) due[i] = base + intAt(windows.to, i);
    return true;
  }

  private finishWhenStartedBy(activity: number, day: number): number {
    const { forward } = this;
    const calendar = forward.calendars[intAt(forward.calendarOf, activity)];
    if (!calendar) return day;
    const lastWorkDay = intAt(calendar.dayOfIndex, intAt(calendar.indexOfDay, day + 1) - 1);
    return finishOf(calendar, lastWorkDay, intAt(forward.durations, activity));
  }
}
