import { describe, expect, it } from 'vitest';
import { at, randomStream } from '../../../core/base';
import type { SearchProblem } from '../../../core/scheduling/search';
import { boundNetOf } from '../../../core/scheduling/search/bounds/bound-net';
import type { Windows } from '../../../core/scheduling/search/bounds/windows';
import { windowsForEnd } from '../../../core/scheduling/search/bounds/windows-for-end';
import { plainNetOf } from '../../../core/scheduling/search/compile-plain';
import { Clauses } from '../../../core/scheduling/search/learning/clauses';
import { ConflictAnalysis } from '../../../core/scheduling/search/learning/conflict-analysis';
import { Cuts } from '../../../core/scheduling/search/learning/cuts';
import { LearningSearch } from '../../../core/scheduling/search/learning/learning-search';
import { Propagation } from '../../../core/scheduling/search/learning/propagation';
import { FullDays } from '../../../core/scheduling/search/learning/reasons';
import {
  BY_CLAUSE,
  BY_RELATIONSHIP,
  DECISION,
  FIRST,
  KIND_BITS,
  kindOf,
  StartRanges,
} from '../../../core/scheduling/search/learning/start-ranges';
import { UrgentCuts } from '../../../core/scheduling/search/learning/urgent-cuts';
import { linksOf } from '../../../core/scheduling/search/plain-net';
import {
  alongLinks,
  besideParts,
  hasSchedule,
  inOrder,
  pairsTooMuch,
  rangesOf,
  settled,
  type Ranges,
  type Rule,
} from './plain-rules';
import { randomProblem } from './random-problem';
import { scheduleFaults } from './schedule-faults';

/** What the learning search works with. */
interface Bench {
  readonly problem: SearchProblem;
  readonly windows: Windows;
  readonly cuts: Cuts;
  readonly ranges: StartRanges;
  readonly clauses: Clauses;
  readonly urgent: UrgentCuts;
  readonly propagation: Propagation;
  readonly analysis: ConflictAnalysis;
}

function benchOf(problem: SearchProblem, end: number): Bench | undefined {
  const bounds = boundNetOf(problem);
  const net = plainNetOf(problem);
  const windows = windowsForEnd(bounds, end);
  if (!windows) return undefined;
  const cuts = new Cuts(windows, net.durations);
  const ranges = new StartRanges(net, windows);
  const clauses = new Clauses(2 * cuts.count);
  const urgent = new UrgentCuts(cuts.count);
  const rivals = linksOf(
    net.count,
    pairsTooMuch(problem).flatMap(([i, j]): [number, number][] => [
      [i, j],
      [j, i],
    ]),
  );
  const propagation = new Propagation(net, rivals, ranges, clauses, cuts);
  const analysis = new ConflictAnalysis(bounds, ranges, clauses, cuts, urgent);
  return { problem, windows, cuts, ranges, clauses, urgent, propagation, analysis };
}

/** Small problems with little room: the first two ends that the rules on windows do not refute. */
function* benches(seeds: number, resources: number): Generator<Bench & { seed: number }> {
  for (let seed = 1; seed < seeds + 1; seed++) {
    const full = randomProblem(seed, { activities: 8, resources });
    const problem = {
      ...full,
      relationships: full.relationships.filter((_, r) => r % 2 === 0),
      resources: full.resources.map((_, r) => ({
        capacity: Math.max(3, ...full.activities.map(({ demands }) => at(demands, r))),
      })),
    };
    let end = 0;
    for (let found = 0; found < 2; end++) {
      const bench = benchOf(problem, end);
      if (!bench) continue;
      found++;
      yield { ...bench, seed };
    }
  }
}

/** Whether it holds (1) or fails (-1) for every start in the ranges. */
function valueIn({ cuts }: Bench, literal: number, { first, last }: Ranges): number {
  const activity = at(cuts.activityOf, literal >> 1);
  const moment = at(cuts.momentOf, literal >> 1);
  const starts = Array.from(
    { length: at(last, activity) - at(first, activity) + 1 },
    (_, d) => at(first, activity) + d,
  );
  const holding = starts.filter(start => start <= moment === ((literal & 1) === 1)).length;
  return holding === starts.length ? 1 : holding === 0 ? -1 : 0;
}

/** Narrows the ranges so that a literal holds. */
function narrow({ cuts }: Bench, literal: number, { first, last }: Ranges): boolean {
  const activity = at(cuts.activityOf, literal >> 1);
  const moment = at(cuts.momentOf, literal >> 1);
  if ((literal & 1) === 1) last[activity] = Math.min(at(last, activity), moment);
  else first[activity] = Math.max(at(first, activity), moment + 1);
  return at(first, activity) <= at(last, activity);
}

/** The rule that clauses give, said plainly: where all literals but one fail, that one holds. */
const byClauses =
  (bench: Bench, clauses: readonly (readonly number[])[]): Rule =>
  (_, ranges) =>
    clauses.every(clause => {
      const values = clause.map(literal => valueIn(bench, literal, ranges));
      const [open, ...more] = clause.filter((__, k) => values[k] === 0);
      if (values.includes(1) || more.length > 0) return true;
      return open !== undefined && narrow(bench, open, ranges);
    });

/** The ranges that windows give. */
const opened = ({ problem, windows }: Bench): Ranges =>
  rangesOf(
    windows.from,
    windows.to.map((finish, i) => finish - at(problem.activities, i).duration),
  );

/** Of two that demand too much together, one order at least is possible. */
const someOrder: Rule = (problem, { first, last }) =>
  pairsTooMuch(problem).every(([i, j]) =>
    [
      [i, j],
      [j, i],
    ].some(([a = 0, b = 0]) => at(first, a) + at(problem.activities, a).duration <= at(last, b)),
  );

const now = ({ ranges }: Bench): Ranges => rangesOf(ranges.first, ranges.last);

/** A way down of random decisions with what is learned on it; what is seen on the way is handed to `check`. */
class Descent {
  readonly bench: Bench;
  readonly clauses: number[][] = [];
  decisions: number[] = [];
  /** Ranges and what is free at the end of each level. */
  readonly stood: { ranges: Ranges; free: number[] }[] = [];
  learnt = 0;
  completed = 0;
  private readonly random: () => number;
  private readonly isChecked: boolean;

  /** @param isChecked whether what follows is compared with the rules said plainly. */
  constructor(bench: Bench, seed: number, isChecked = false) {
    this.bench = bench;
    this.isChecked = isChecked;
    this.random = randomStream(seed, 'decisions');
  }

  /** Decides until so many conflicts or complete schedules, or until nothing is left. */
  run(most: number, onLearn: (before: number) => void): void {
    const { bench } = this;
    for (let k = 0; this.learnt + this.completed < most && k < 500; k++) {
      const { propagation, ranges } = bench;
      const holds = propagation.run();
      if (this.isChecked) this.checkWhatFollows(holds);
      if (!holds) {
        if (ranges.level === 0) {
          expect(hasSchedule(bench.problem, opened(bench))).toBe(false);
          return;
        }
        this.learn(onLearn);
      } else if (ranges.level === 0 && ranges.length > 0) {
        ranges.settle();
        propagation.reset();
      } else if (!this.decide()) this.complete();
    }
  }

  /** Nothing is left out by the rules on relationships, days and clauses, and nothing ruled out but by all rules together. */
  private checkWhatFollows(holds: boolean): void {
    const { bench, clauses } = this;
    const { problem } = bench;
    const clauseRule = byClauses(bench, clauses);
    const least = opened(bench);
    const isLeft =
      this.decisions.every(literal => narrow(bench, literal, least)) &&
      settled(problem, least, [alongLinks, inOrder, besideParts, clauseRule]);
    if (!holds) {
      expect(isLeft).toBe(false);
      return;
    }
    const ranges = now(bench);
    expect(this.decisions.map(literal => valueIn(bench, literal, ranges))).toEqual(
      this.decisions.map(() => 1),
    );
    expect(settled(problem, ranges, [alongLinks, besideParts, clauseRule, someOrder])).toBe(true);
    expect(ranges).toEqual(now(bench));
    if (!isLeft) return;
    expect(ranges.first.filter((start, i) => start > at(least.first, i))).toEqual([]);
    expect(ranges.last.filter((start, i) => start < at(least.last, i))).toEqual([]);
  }

  private decide(): boolean {
    const { bench } = this;
    const { ranges, cuts, propagation } = bench;
    const open = [...cuts.activityOf.keys()].filter(cut => propagation.valueOf(2 * cut) === 0);
    if (open.length === 0) return false;
    this.stood[ranges.level] = { ranges: now(bench), free: [...ranges.free] };
    const literal = 2 * at(open, Math.floor(this.random() * open.length)) + (this.random() < 0.5 ? 1 : 0);
    ranges.openLevel();
    this.decisions.push(literal);
    propagation.hold(literal, DECISION);
    return true;
  }

  /** Every start is fixed: that is a schedule, and another way down begins. */
  private complete(): void {
    const { analysis, propagation, ranges, problem } = this.bench;
    expect(scheduleFaults(problem, ranges.first)).toEqual([]);
    this.completed++;
    analysis.backTo(0);
    propagation.reset();
    this.decisions = [];
    if (this.stood[0]) this.stands(0);
  }

  private learn(onLearn: (before: number) => void): void {
    const { analysis, propagation, clauses, ranges } = this.bench;
    const { level } = ranges;
    analysis.learn(propagation);
    const clause = [...analysis.learned.subarray(0, analysis.length)];
    this.learnt++;
    onLearn(level);
    analysis.backTo(analysis.backLevel);
    propagation.reset();
    expect(ranges.level).toBe(analysis.backLevel);
    this.stands(analysis.backLevel);
    this.decisions.length = analysis.backLevel;
    this.clauses.push(clause);
    const [literal = -1] = clause;
    if (clause.length === 1) {
      propagation.hold(literal, DECISION);
      return;
    }
    const number = clauses.add(analysis.learned, analysis.length, analysis.spread, analysis.conflicts);
    propagation.hold(literal, (number << KIND_BITS) | BY_CLAUSE);
  }

  /** All is again as it was at the end of a level. */
  private stands(level: number): void {
    const { ranges } = this.bench;
    expect({ ranges: now(this.bench), free: [...ranges.free] }).toEqual(this.stood[level]);
  }
}

/** The lowest level at the end of which a literal fails. */
const failsFrom = ({ bench, stood }: Descent, literal: number, below: number): number => {
  const level = stood.slice(0, below).findIndex(({ ranges }) => valueIn(bench, literal, ranges) === -1);
  return level < 0 ? below : level;
};

describe('what follows from decisions and learned clauses', () => {
  for (const [name, resources] of [
    ['one word', 2],
    ['several words', 9],
  ] as const) {
    it(`is what the rules said plainly give, and every conflict is one, with ${name}`, () => {
      let [learnt, completed] = [0, 0];
      for (const bench of benches(10, resources)) {
        const descent = new Descent(bench, bench.seed, true);
        descent.run(25, () => undefined);
        learnt += descent.learnt;
        completed += descent.completed;
      }
      expect(Math.min(learnt, completed)).toBeGreaterThan(15);
    });
  }
});

describe('two that demand too much together', () => {
  it('are put in order by a first decision that leaves only one, and kept so', () => {
    let ordered = 0;
    for (const [before, behind, room] of [
      [2, 3, 6],
      [4, 1, 7],
      [3, 3, 8],
      [1, 2, 5],
    ] as const) {
      const problem: SearchProblem = {
        ...randomProblem(1, { activities: 2, resources: 1 }),
        activities: [before, behind].map(duration => ({ duration, demands: [2] })),
        relationships: [],
        resources: [{ capacity: 3 }],
      };
      const cuts = benchOf(problem, room)?.cuts.count ?? 0;
      expect(cuts).toBe(2 * room - before - behind);
      for (let literal = 0; literal < 2 * cuts; literal++) {
        const bench = benchOf(problem, room);
        if (!bench) throw new Error('there is room for both');
        const { propagation, ranges } = bench;
        expect(propagation.run()).toBe(true);
        const wanted = opened(bench);
        expect(now(bench)).toEqual(wanted);
        ranges.openLevel();
        narrow(bench, literal, wanted);
        propagation.hold(literal, DECISION);
        const before = ranges.length;
        const isLeft = settled(problem, wanted, [inOrder, besideParts]);
        expect(propagation.run()).toBe(isLeft);
        if (!isLeft) continue;
        expect(now(bench)).toEqual(wanted);
        if (ranges.length > before) ordered++;
      }
    }
    expect(ordered).toBeGreaterThan(20);
  });
});

describe('a learned clause', () => {
  it('holds in every schedule', () => {
    let learnt = 0;
    for (const bench of benches(25, 2)) {
      const descent = new Descent(bench, bench.seed + 1000);
      descent.run(30, () => {
        const ranges = opened(bench);
        const { learned, length } = bench.analysis;
        const isOpen = learned.subarray(0, length).every(literal => narrow(bench, literal ^ 1, ranges));
        expect(isOpen && hasSchedule(bench.problem, ranges)).toBe(false);
        learnt++;
      });
    }
    expect(learnt).toBeGreaterThan(200);
  });

  it('leaves, on the level to go back to, its first literal alone; the next failed there, the others no later', () => {
    let long = 0;
    for (const bench of benches(40, 2)) {
      const descent = new Descent(bench, bench.seed + 2000);
      descent.run(30, level => {
        const { analysis } = bench;
        const [own = -1, ...others] = analysis.learned.subarray(0, analysis.length);
        const levels = others.map(literal => failsFrom(descent, literal, level));
        expect(failsFrom(descent, own, level)).toBe(level);
        expect(analysis.backLevel).toBe(Math.max(0, ...levels));
        expect(analysis.backLevel).toBeLessThan(level);
        expect(levels[0] ?? 0).toBe(analysis.backLevel);
        expect(analysis.spread).toBe(1 + new Set(levels).size);
        expect(levels).not.toContain(0);
        if (levels.length > 1) long++;
      });
    }
    expect(long).toBeGreaterThan(30);
  });

  it('names nothing twice, and nothing that follows by one reason from what else it names', () => {
    let [byLink, byClause] = [0, 0];
    for (const bench of benches(40, 2)) {
      const { ranges, cuts, clauses, analysis } = bench;
      const { durations } = boundNetOf(bench.problem);
      /** The limit whose opposite a literal is: the side and the moment. */
      const limitOf = (literal: number) => {
        const activity = at(cuts.activityOf, literal >> 1);
        const moment = at(cuts.momentOf, literal >> 1);
        return (literal & 1) === 1
          ? { side: 2 * activity + FIRST, moment: moment + 1 }
          : { side: 2 * activity + 1, moment };
      };
      const says = (side: number, moment: number, other: number) =>
        (side & 1) === FIRST ? moment >= other : moment <= other;
      const changeOf = (side: number, moment: number) =>
        Array.from({ length: ranges.length }, (_, change) => change).findIndex(
          change => ranges.sides[change] === side && says(side, at(ranges.after, change), moment),
        );
      const descent = new Descent(bench, bench.seed + 3000);
      descent.run(30, () => {
        const limits = [...analysis.learned.subarray(0, analysis.length)].map(limitOf);
        expect(new Set(limits.map(({ side }) => side)).size).toBe(limits.length);
        const isNamed = (side: number, moment: number, before: number) => {
          const place = changeOf(side, moment);
          if (place < 0) return true;
          return limits.some(
            limit =>
              limit.side === side &&
              says(side, limit.moment, moment) &&
              changeOf(side, limit.moment) < before &&
              place < before,
          );
        };
        for (const { side, moment } of limits.slice(1)) {
          const change = changeOf(side, moment);
          const reason = at(ranges.reasons, change);
          const about = reason >> KIND_BITS;
          if (kindOf(reason) === BY_RELATIONSHIP) {
            byLink++;
            const isFirst = (side & 1) === FIRST;
            const from = isFirst ? moment - at(durations, about) : moment + at(durations, side >> 1);
            expect(isNamed(2 * about + (side & 1), from, change)).toBe(false);
          } else if (kindOf(reason) === BY_CLAUSE && reason !== DECISION) {
            byClause++;
            const premises = [
              ...clauses.literals.subarray(at(clauses.starts, about), at(clauses.starts, about + 1)),
            ]
              .map(limitOf)
              .filter(limit => limit.side !== (side ^ 1));
            expect(premises.every(limit => isNamed(limit.side, limit.moment, change))).toBe(false);
          }
        }
      });
    }
    expect(byLink).toBeGreaterThan(20);
    expect(byClause).toBeGreaterThan(20);
  });

  it('makes the cuts it is about urgent, and those that were taken come back when they are open again', () => {
    let learnt = 0;
    for (const bench of benches(30, 2)) {
      const { analysis, urgent, cuts, propagation, ranges } = bench;
      const raised = new Set<number>();
      const descent = new Descent(bench, bench.seed + 4000);
      descent.run(6, () => {
        for (const literal of analysis.learned.subarray(0, analysis.length)) raised.add(literal >> 1);
        learnt++;
      });
      analysis.backTo(0);
      propagation.reset();
      const open = [...cuts.activityOf.keys()].filter(cut => propagation.valueOf(2 * cut) === 0);
      const drained = new Set<number>();
      for (let cut = urgent.take(); cut >= 0; cut = urgent.take()) drained.add(cut);
      expect(ranges.level).toBe(0);
      expect(open.filter(cut => raised.has(cut) && !drained.has(cut))).toEqual([]);
    }
    expect(learnt).toBeGreaterThan(50);
  });
});

describe('the learning search between windows that the rules have narrowed', () => {
  it('hands out shorter and shorter schedules that keep every condition, and proves the last the shortest', () => {
    let [without, several] = [0, 0];
    for (const { problem, windows } of benches(15, 2)) {
      const bounds = boundNetOf(problem);
      const windowsFor = (end: number) => windowsForEnd(bounds, end);
      const room = windowsFor(windows.end + 4);
      if (!room) throw new Error('more room is not less');
      let lastEnd = 0;
      const inRow = Int32Array.from(problem.activities, ({ duration }) => (lastEnd += duration) - duration);
      for (const given of [windows, room]) {
        const ends: number[] = [];
        const search = new LearningSearch(plainNetOf(problem), bounds, given, inRow, {
          ...{ limit: 20_000, shouldStop: () => false, windowsFor },
          found: (starts, end) => {
            expect(scheduleFaults(problem, starts)).toEqual([]);
            expect(end).toBe(
              Math.max(...problem.activities.map(({ duration }, i) => at(starts, i) + duration)),
            );
            ends.push(end);
          },
        });
        expect(search.run().isComplete).toBe(true);
        expect(ends).toEqual([...new Set(ends)].sort((a, b) => b - a));
        const [first = given.end] = ends;
        expect(first).toBeLessThanOrEqual(given.end);
        const shorter = benchOf(problem, (ends.at(-1) ?? given.end + 1) - 1);
        expect(shorter !== undefined && hasSchedule(problem, opened(shorter))).toBe(false);
        if (ends.length === 0) without++;
        if (ends.length > 1) several++;
      }
    }
    expect(without).toBeGreaterThan(0);
    expect(several).toBeGreaterThan(3);
  });
});

describe('the reason of a full day', () => {
  it('names activities that run then, too many for one resource, and none that could be left out', () => {
    let named = 0;
    for (const { problem, windows, ranges, seed } of benches(25, 2)) {
      const bounds = boundNetOf(problem);
      const random = randomStream(seed, 'starts');
      problem.activities.forEach((_, i) => {
        const start =
          at(ranges.first, i) + Math.floor(random() * (at(ranges.last, i) - at(ranges.first, i) + 1));
        ranges.first[i] = start;
        ranges.last[i] = start;
      });
      const days = new FullDays(bounds, ranges);
      const isOn = (i: number, day: number) =>
        at(ranges.first, i) <= day && day < at(ranges.first, i) + at(bounds.durations, i);
      for (let day = 0; day < windows.end; day++) {
        for (let beside = -1; beside < problem.activities.length; beside++) {
          const limits: [string, number, number][] = [];
          days.explain(day, beside, {
            startsFrom: (activity, moment) => limits.push(['from', activity, moment]),
            startsBy: (activity, moment) => limits.push(['by', activity, moment]),
          });
          const members = limits.filter(([kind]) => kind === 'by').map(([, activity]) => activity);
          expect(limits).toEqual(
            members.flatMap(i => [
              ['by', i, day],
              ['from', i, day - at(bounds.durations, i) + 1],
            ]),
          );
          const sums = problem.resources.map(({ capacity }, r) => {
            const units = (i: number) => (i < 0 ? 0 : at(at(problem.activities, i).demands, r));
            const isOwn = beside < 0 || units(beside) > 0;
            const others = [...problem.activities.keys()].filter(i => isOn(i, day) && i !== beside);
            const above = (some: readonly number[]) =>
              isOwn && units(beside) + some.reduce((sum, i) => sum + units(i), 0) > capacity;
            const isNeeded = (i: number) => !above(members.filter(other => other !== i));
            return { isFull: above(others), isReason: above(members) && members.every(isNeeded) };
          });
          expect(members.filter(i => !isOn(i, day) || i === beside)).toEqual([]);
          const isFull = sums.some(sum => sum.isFull);
          expect(sums.some(sum => sum.isReason)).toBe(isFull);
          if (!isFull) expect(members).toEqual([]);
          else named++;
        }
      }
    }
    expect(named).toBeGreaterThan(100);
  });
});
