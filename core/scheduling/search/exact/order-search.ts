import type { BoundNet } from '../bounds/bound-net';
import type { Windows } from '../bounds/windows';
import { NONE } from '../dice';
import type { PlainNet } from '../plain-net';
import { fitsFrom, holdFrom, passMemoryOf, releaseFrom, type PassMemory } from '../serial-pass';
import type { ExactOutcome } from './delay-search';
import { RemainingWork } from './remaining-work';
import { StateMemory } from './state-memory';

/** The allowance of an exact search of a plain network. */
export interface OrderTask {
  /** Schedules it may spend: placements tried over activities. */
  readonly limit: number;
  readonly shouldStop: () => boolean;
  /**
   * Windows of the activities for an end before the best one known, or null when it is proved that there is none; asked
   * again after each better schedule.
   */
  readonly windowsFor: (end: number) => Windows | null;
  /** Hears of every better schedule. */
  readonly found: (finishes: Int32Array, last: number) => void;
}

/**
 * Exact branch and bound for plain networks of at most 31 activities: the activities are started in the order of
 * time, each as early as it fits, and next only those that start before some other could be over. States with
 * the same activities started are compared: one that has nothing running longer than another dominates it.
 * @source Giffler and Thompson, Operations Research 8 (1960) 487-503; Demeulemeester and Herroelen, Management
 *   Science 38 (1992) 1803-1818 and 43 (1997) 1485-1492 (cutset dominance).
 */
export class OrderSearch {
  private readonly net: PlainNet;
  private readonly task: OrderTask;
  private readonly memory: PassMemory;
  private readonly states: StateMemory;
  private readonly remaining: RemainingWork;
  private readonly finishes: Int32Array;
  private readonly open: Int32Array;
  /** Activities that may start next and their starts, `count` places for each number of activities started. */
  private readonly chosen: Int32Array;
  private readonly chosenStarts: Int32Array;
  private earliest: Int32Array;
  private latest: Int32Array;
  private best: number;
  private tried = 0;
  private isCut = false;
  private isOver = false;

  constructor(net: PlainNet, bounds: BoundNet, best: number, task: OrderTask) {
    this.net = net;
    this.task = task;
    this.best = best;
    this.memory = passMemoryOf(net);
    this.remaining = new RemainingWork(bounds);
    this.states = new StateMemory(net.count, task.limit * 8);
    this.finishes = new Int32Array(net.count);
    this.open = Int32Array.from(
      net.durations,
      (_, i) => (net.predecessors.first[i + 1] ?? NONE) - (net.predecessors.first[i] ?? NONE),
    );
    this.chosen = new Int32Array(net.count * net.count);
    this.chosenStarts = new Int32Array(net.count * net.count);
    this.earliest = new Int32Array(net.count);
    this.latest = new Int32Array(net.count);
  }

  run(): ExactOutcome {
    this.aimBelow(this.best);
    if (!this.isOver) this.branch(0, 0, 0, 0);
    return { isComplete: !this.isCut, spent: this.tried / this.net.count };
  }

  private aimBelow(end: number): void {
    this.best = end;
    const windows = this.task.windowsFor(end - 1);
    if (windows) this.earliest = windows.from;
    if (windows) this.latest = windows.to;
    else this.isOver = true;
  }

  /** @param started the set of started activities as bits; @param now the last start; @param last the last finish. */
  private branch(started: number, count: number, now: number, last: number): void {
    if (this.isOver) return;
    if (count === this.net.count) {
      this.task.found(this.finishes, last);
      this.aimBelow(last);
      return;
    }
    if (this.tried >= this.task.limit * this.net.count || this.task.shouldStop()) {
      this.isCut = true;
      this.isOver = true;
      return;
    }
    if (this.states.isDominated(started, now, this.finishes)) return;
    if (!this.remaining.fits(started, now, this.finishes, this.latest, this.best - 1)) return;
    const from = count * this.net.count;
    const to = from + this.candidates(started, now, from);
    for (let k = from; k < to; k++) {
      const activity = this.chosen[k] ?? NONE;
      const start = this.chosenStarts[k] ?? NONE;
      const finish = start + (this.net.durations[activity] ?? NONE);
      if (finish > (this.latest[activity] ?? NONE)) continue;
      this.startAt(activity, start, finish);
      this.branch(started | (1 << activity), count + 1, start, Math.max(last, finish));
      this.undo(activity, start);
    }
  }

  /**
   * Enters the ready activities that may start next from a place on, with their starts, the most urgent first.
   * @returns how many; none if one is too late.
   */
  private candidates(started: number, now: number, from: number): number {
    const { net, latest } = this;
    let to = from;
    let firstFinish = Infinity;
    for (let i = 0; i < net.count; i++) {
      if ((started & (1 << i)) !== 0 || (this.open[i] ?? NONE) > 0) continue;
      const start = this.earliestFit(i);
      const duration = net.durations[i] ?? NONE;
      if (Math.max(start, now) + duration > (latest[i] ?? NONE)) return 0;
      if (start >= now && start >= (this.earliest[i] ?? NONE)) this.enter(i, start, from, to++);
      if (start + duration < firstFinish) firstFinish = start + duration;
    }
    let kept = from;
    for (let k = from; k < to; k++) {
      const i = this.chosen[k] ?? NONE;
      const start = this.chosenStarts[k] ?? NONE;
      if (start > firstFinish || (start === firstFinish && net.durations[i] !== 0)) continue;
      this.chosen[kept] = i;
      this.chosenStarts[kept++] = start;
    }
    return kept - from;
  }

  /** Enters an activity among those before it, by start and then by latest finish. */
  private enter(activity: number, start: number, from: number, to: number): void {
    const { chosen, chosenStarts, latest } = this;
    const urgency = latest[activity] ?? NONE;
    let k = to;
    for (; k > from; k--) {
      const before = chosenStarts[k - 1] ?? NONE;
      const other = chosen[k - 1] ?? NONE;
      if (before < start || (before === start && (latest[other] ?? NONE) <= urgency)) break;
      chosen[k] = other;
      chosenStarts[k] = before;
    }
    chosen[k] = activity;
    chosenStarts[k] = start;
  }

  private earliestFit(activity: number): number {
    const { first, list } = this.net.predecessors;
    let start = 0;
    for (let p = first[activity] ?? NONE; p < (first[activity + 1] ?? NONE); p++) {
      start = Math.max(start, this.finishes[list[p] ?? NONE] ?? NONE);
    }
    this.tried++;
    while (!fitsFrom(this.net, this.memory, activity, start)) start++;
    return start;
  }

  private startAt(activity: number, start: number, finish: number): void {
    holdFrom(this.net, this.memory, activity, start);
    this.finishes[activity] = finish;
    this.eachSuccessor(activity, -1);
  }

  private undo(activity: number, start: number): void {
    releaseFrom(this.net, this.memory, activity, start);
    this.finishes[activity] = 0;
    this.eachSuccessor(activity, 1);
  }

  private eachSuccessor(activity: number, change: number): void {
    const { first, list } = this.net.successors;
    for (let s = first[activity] ?? NONE; s < (first[activity + 1] ?? NONE); s++) {
      const next = list[s] ?? NONE;
      this.open[next] = (this.open[next] ?? NONE) + change;
    }
  }
}
