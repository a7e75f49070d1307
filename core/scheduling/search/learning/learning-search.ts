import { intAt } from '../../../base';
import type { BoundNet } from '../bounds/bound-net';
import type { Windows } from '../bounds/windows';
import type { ExactOutcome } from '../exact/delay-search';
import { linksOf, type Links, type PlainNet } from '../plain-net';
import { incompatiblePairs } from '../bounds/pairs';
import { Clauses } from './clauses';
import { ConflictAnalysis } from './conflict-analysis';
import { Cuts } from './cuts';
import { Propagation } from './propagation';
import { BY_CLAUSE, DECISION, KIND_BITS, StartRanges } from './start-ranges';
import { UrgentCuts } from './urgent-cuts';

/** The allowance of a learning search. */
export interface LearningTask {
  /** Schedules it may spend: placements over activities. */
  readonly limit: number;
  readonly shouldStop: () => boolean;
  /** Windows of the activities for an end before the best one known, or null when it is proved that there is none. */
  readonly windowsFor: (end: number) => Windows | null;
  /** Hears of every better schedule. */
  readonly found: (starts: Int32Array, last: number) => void;
}

/** Conflicts of the shortest run between two fresh starts. */
const RUN = 60;
/** Clauses that are kept at first, and how many more after each clearing. */
const KEPT = 2000;
const KEPT_MORE = 300;

/**
 * Exact search that learns: ranges of starts are parted in two, what follows is propagated, and each contradiction
 * gives a clause that keeps it from happening again. Asks for an end earlier than the best one known, until it is
 * found or refuted.
 * @source Schutt, Feydt, Stuckey and Wallace, Journal of Scheduling 16 (2013) 273-289 (lazy clause generation).
 */
export class LearningSearch {
  private readonly net: PlainNet;
  private readonly task: LearningTask;
  private readonly cuts: Cuts;
  private readonly ranges: StartRanges;
  private readonly clauses: Clauses;
  private readonly urgent: UrgentCuts;
  private readonly propagation: Propagation;
  private readonly analysis: ConflictAnalysis;
  /** The best schedule known: ranges are parted so that it stays possible. */
  private readonly wished: Int32Array;
  private mostClauses = KEPT;
  private runs = 0;

  /** @param windows those for an end before the best one known. @param wished starts of the best schedule known. */
  constructor(net: PlainNet, bounds: BoundNet, windows: Windows, wished: Int32Array, task: LearningTask) {
    this.net = net;
    this.task = task;
    this.wished = wished.slice();
    this.cuts = new Cuts(windows, net.durations);
    this.ranges = new StartRanges(net, windows);
    this.clauses = new Clauses(2 * this.cuts.count);
    this.urgent = new UrgentCuts(this.cuts.count);
    this.propagation = new Propagation(net, rivalsOf(bounds), this.ranges, this.clauses, this.cuts);
    this.analysis = new ConflictAnalysis(bounds, this.ranges, this.clauses, this.cuts, this.urgent);
  }

  run(): ExactOutcome {
    let isComplete = !this.settle();
    while (!isComplete && !this.isOver()) isComplete = this.oneRun(RUN * luby(++this.runs));
    return { isComplete, spent: this.spent() };
  }

  private spent(): number {
    return (this.propagation.work + this.analysis.work) / this.net.count;
  }

  private isOver(): boolean {
    return this.spent() >= this.task.limit || this.task.shouldStop();
  }

  /** Propagates without any decision; false: nothing is left. */
  private settle(): boolean {
    if (!this.propagation.run()) return false;
    this.ranges.settle();
    this.propagation.reset();
    return true;
  }

  /** Searches until so many conflicts; true: everything was searched. */
  private oneRun(conflicts: number): boolean {
    const { analysis, ranges, propagation } = this;
    const end = analysis.conflicts + conflicts;
    for (;;) {
      if (!propagation.run()) {
        if (ranges.level === 0) return true;
        this.learn();
        if (analysis.conflicts >= end || this.isOver()) return this.startAfresh();
      } else if (ranges.level === 0 && ranges.length > 0) {
        ranges.settle();
        propagation.reset();
      } else if (this.spent() >= this.task.limit) return false;
      else if (!this.decide() && !this.improve()) return true;
    }
  }

  /** Learns from a conflict, goes back and draws the conclusion; when it fails, that is the next conflict. */
  private learn(): void {
    const { analysis, clauses, propagation } = this;
    analysis.learn(propagation);
    analysis.backTo(analysis.backLevel);
    propagation.reset();
    const literal = intAt(analysis.learned, 0);
    if (analysis.length === 1) {
      propagation.hold(literal, DECISION);
      return;
    }
    const clause = clauses.add(analysis.learned, analysis.length, analysis.spread, analysis.conflicts);
    propagation.hold(literal, (clause << KIND_BITS) | BY_CLAUSE);
  }

  /** Takes all decisions back; true: nothing is left. */
  private startAfresh(): boolean {
    if (this.ranges.level > 0) {
      this.analysis.backTo(0);
      this.propagation.reset();
    }
    if (!this.settle()) return true;
    if (this.clauses.count > this.mostClauses) {
      this.clauses.shrink(literal => this.propagation.valueOf(literal));
      this.mostClauses += KEPT_MORE;
    }
    return false;
  }

  /** Parts a range; false: every start is fixed. */
  private decide(): boolean {
    const { ranges, urgent, cuts, propagation } = this;
    for (let cut = urgent.take(); cut >= 0; cut = urgent.take()) {
      const literal = 2 * cut + 1;
      if (propagation.valueOf(literal) !== 0) continue;
      const isEarly = intAt(this.wished, intAt(cuts.activityOf, cut)) <= intAt(cuts.momentOf, cut);
      ranges.openLevel();
      propagation.hold(isEarly ? literal : literal - 1, DECISION);
      return true;
    }
    const activity = this.nextOpen();
    if (activity < 0) return false;
    ranges.openLevel();
    propagation.lowerLast(activity, intAt(ranges.first, activity), DECISION);
    return true;
  }

  /** The activity with more than one start left that can start first; -1: none. */
  private nextOpen(): number {
    const { first, last } = this.ranges;
    let best = -1;
    let bestStart = Infinity;
    for (let i = 0; i < first.length; i++) {
      const start = intAt(first, i);
      const latest = intAt(last, i);
      if (start === latest) continue;
      if (start < bestStart || (start === bestStart && latest < intAt(last, best))) {
        best = i;
        bestStart = start;
      }
    }
    return best;
  }

  /** Hands the schedule found out and asks for an earlier end; false: there is none. */
  private improve(): boolean {
    const { ranges, net, propagation } = this;
    this.wished.set(ranges.first);
    let end = 0;
    for (let i = 0; i < net.count; i++) {
      end = Math.max(end, intAt(ranges.first, i) + intAt(net.durations, i));
    }
    this.task.found(this.wished, end);
    this.analysis.backTo(0);
    propagation.reset();
    const windows = this.task.windowsFor(end - 1);
    return windows !== null && this.narrow(windows) && this.settle();
  }

  private narrow(windows: Windows): boolean {
    const { ranges, net, propagation } = this;
    for (let i = 0; i < net.count; i++) {
      const from = intAt(windows.from, i);
      const to = intAt(windows.to, i) - intAt(net.durations, i);
      if (from > intAt(ranges.first, i) && !propagation.raiseFirst(i, from, DECISION)) return false;
      if (to < intAt(ranges.last, i) && !propagation.lowerLast(i, to, DECISION)) return false;
    }
    return true;
  }
}

/**
 * How many times the shortest run is a run: 1, 1, 2, 1, 1, 2, 4, ...
 * @source Luby, Sinclair and Zuckerman, Information Processing Letters 47 (1993) 173-180.
 */
export function luby(run: number): number {
  let size = 1;
  while (2 * size <= run) size *= 2;
  return run === 2 * size - 1 ? size : luby(run - size + 1);
}

/** Of each activity those that cannot run beside it. */
function rivalsOf(net: BoundNet): Links {
  const pairs: [number, number][] = [];
  const rivals = incompatiblePairs(net);
  for (let k = 0; k < rivals.length; k += 2) {
    const [one, other] = [intAt(rivals, k), intAt(rivals, k + 1)];
    pairs.push([one, other], [other, one]);
  }
  return linksOf(net.count, pairs);
}
