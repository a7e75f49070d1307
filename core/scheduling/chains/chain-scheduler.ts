import { dayOf } from '../../calendar';
import { at, byteAt, valueAt } from '../../base';
import { compile } from '../compile/compile';
import type { Compiled } from '../compile/compiled';
import type { ScheduleProblem } from '../model';
import type { ScheduleResult } from '../result';
import { NEVER } from '../time';
import { chainPass, type ChainPass, type Gate, type Trials } from './chain-pass';
import { markDriving } from './drives-finish';
import { openRuns } from './node';
import { resourceChains } from './resource-chains';

/** Some trials to schedule at once: columns by activity, each with one value a trial. */
export interface ChainTrials {
  readonly n: number;
  /** Days each activity holds, weather allowance included where the plan keeps one; NaN where it is absent. */
  readonly durations: readonly Trials[];
  /** Filled with moments, in calendar days from the horizon start; a finish is the end of the last day. */
  readonly starts: readonly Trials[];
  readonly finishes: readonly Trials[];
  /** Filled with the last finish of each trial, NaN where there is none. */
  readonly finish: Trials;
  /** By position: activities that wait for something, and how long they must. */
  readonly gates?: ReadonlyMap<number, Gate>;
  /** Whether the dates of an activity already stand in the columns, if nothing before it is new. Absent: none stand. */
  readonly stands?: (activity: number) => boolean;
}

/** A scheduler for trials, with what turns its moments into dates. */
export interface ChainScheduler {
  /** Activity ids by position. */
  readonly activities: readonly string[];
  /** Schedules some trials. */
  chunk(trials: ChainTrials): void;
  /** Adds to each activity in how many of those trials it drives the finish. */
  countDriving(trials: ChainTrials, counts: Trials): void;
  /** Day number of moment 0, and how many moments there are. */
  readonly first: number;
  readonly horizon: number;
  /** By activity 1 where it is a milestone that closes its day: its date is the day before its moment. */
  readonly closes: Uint8Array;
  readonly isMilestone: Uint8Array;
  /** By activity 1 where its dates do not follow its duration any more: it has begun or finished. */
  readonly isUnderWay: Uint8Array;
  /** Open days on end from each moment on, of activities whose days must follow each other. */
  readonly openRuns: ReadonlyMap<string, Int32Array>;
  /** The plan decoded: its finish is that of the schedule. */
  readonly plannedFinish: number;
}

/**
 * Schedules the plan again with other durations, in one forward pass: every relationship, calendar, closure and zone
 * state kept, and crews and places passed on in the order of the plan. That is what a yard does that keeps its plan:
 * a crew goes where the plan sends it next, when it is free.
 * Deadlines do not hold: missing them is what a simulation counts.
 * @returns undefined when the plan cannot be told by chains; `trialScheduler` can.
 */
export function chainScheduler(problem: ScheduleProblem, plan: ScheduleResult): ChainScheduler | undefined {
  const free = { ...problem, activities: problem.activities.map(({ deadline: _, ...activity }) => activity) };
  const compiled = compile(free);
  const { search, activities } = compiled;
  if (search.relationships.some(r => r.maximumLag !== undefined)) return undefined;
  const planned = plannedMoments(compiled, plan);
  if (planned === undefined) return undefined;
  const chains = resourceChains(search, planned.starts, planned.finishes);
  const pass = chains && chainPass(compiled, chains);
  if (pass === undefined) return undefined;
  const flag = (is: (a: Compiled['activities'][number]) => boolean) =>
    Uint8Array.from(activities, a => Number(is(a)));
  const isUnderWay = flag(a => a.state !== 'planned');
  const bench = new ChainBench(compiled, pass, isUnderWay, problem.activities.length);
  return {
    activities: problem.activities.map(activity => activity.id),
    first: compiled.first,
    horizon: search.horizon,
    closes: flag(a => a.isMilestone && a.isClosing),
    isMilestone: flag(a => a.isMilestone),
    isUnderWay,
    openRuns: new Map(
      problem.activities.flatMap((a, i) =>
        a.consecutive ? [[a.id, openRuns(at(activities, i).open.flags)]] : [],
      ),
    ),
    plannedFinish: bench.plannedFinish(),
    chunk: trials => {
      bench.schedule(trials);
    },
    countDriving: (trials, counts) => {
      bench.countDriving(trials, counts);
    },
  };
}

/** Fractions of a day closer to a whole day than this are rounding. */
const DAY_TOLERANCE = 1e-9;

/** The columns a pass works on: those handed in, and its own for whole days and anchors of work begun. */
class ChainBench {
  readonly #compiled: Compiled;
  readonly #pass: ChainPass;
  readonly #isUnderWay: Uint8Array;
  readonly #count: number;
  #days: Trials[] = [];
  #anchors: readonly [Trials[], Trials[]] = [[], []];
  #marks: Uint8Array[] = [];

  constructor(compiled: Compiled, pass: ChainPass, isUnderWay: Uint8Array, count: number) {
    this.#compiled = compiled;
    this.#pass = pass;
    this.#isUnderWay = isUnderWay;
    this.#count = count;
  }

  plannedFinish(): number {
    const { activities } = this.#compiled.search;
    const columns = () => Array.from({ length: this.#count }, () => new Float64Array(1));
    const durations = activities.slice(0, this.#count).map(a => Float64Array.of(a.duration));
    const trials = { n: 1, durations, starts: columns(), finishes: columns(), finish: new Float64Array(1) };
    this.schedule(trials);
    return valueAt(trials.finish, 0);
  }

  schedule(trials: ChainTrials): void {
    const { n, durations, finish, finishes } = trials;
    this.#makeRoom(n);
    finish.fill(0, 0, n);
    durations.forEach((column, i) => {
      if (this.#isUnderWay[i] === 1) return;
      const days = at(this.#days, i);
      for (let t = 0; t < n; t++) {
        const whole = Math.ceil(valueAt(column, t) - DAY_TOLERANCE);
        if (whole >= 0) days[t] = whole;
        else [days[t], finish[t]] = [0, Number.NaN];
      }
    });
    const [starts, ends] = this.#all(trials);
    const { gates = new Map<number, Gate>(), stands = () => false } = trials;
    const isStanding = (i: number) => i >= this.#count || stands(i);
    this.#pass.run({ n, days: this.#days, starts, finishes: ends, gates, stands: isStanding });
    for (const column of finishes) latest(finish, column, n);
    for (let t = 0; t < n; t++) if (valueAt(finish, t) >= NEVER) finish[t] = Number.NaN;
  }

  countDriving(trials: ChainTrials, counts: Trials): void {
    const { n, finish } = trials;
    const [starts, finishes] = this.#all(trials);
    markDriving(this.#compiled, this.#pass.nodes, { n, starts, finishes }, finish, this.#marks);
    for (let i = 0; i < counts.length; i++) {
      const mark = at(this.#marks, i);
      let sum = 0;
      for (let t = 0; t < n; t++) if (!Number.isNaN(finish[t])) sum += byteAt(mark, t);
      counts[i] = valueAt(counts, i) + sum;
    }
  }

  #all({ starts, finishes }: ChainTrials): readonly [readonly Trials[], readonly Trials[]] {
    const [begun, done] = this.#anchors;
    return begun.length === 0
      ? [starts, finishes]
      : [
          [...starts, ...begun],
          [...finishes, ...done],
        ];
  }

  /** Columns long enough; days of work under way stay as they are planned. */
  #makeRoom(n: number): void {
    if ((this.#days[0]?.length ?? 0) >= n) return;
    const { activities } = this.#compiled.search;
    const made = () => new Float64Array(n);
    this.#days = activities.map(a => made().fill(a.duration));
    const anchors = activities.slice(this.#count);
    const fixed = (a: (typeof anchors)[number]) => a.fixedStart ?? 0;
    this.#anchors = [
      anchors.map(a => made().fill(fixed(a))),
      anchors.map(a => made().fill(fixed(a) + a.duration)),
    ];
    this.#marks = activities.map(() => new Uint8Array(n));
  }
}

function latest(finish: Trials, column: Trials, n: number): void {
  for (let t = 0; t < n; t++) {
    const moment = valueAt(column, t);
    // A trial without a finish stays without one: nothing is greater than NaN.
    if (moment > valueAt(finish, t)) finish[t] = moment;
  }
}

/** The plan in moments again; anchors of work begun lie where they are fixed. */
function plannedMoments(
  compiled: Compiled,
  plan: ScheduleResult,
): { starts: Int32Array; finishes: Int32Array } | undefined {
  const { search, first, activities } = compiled;
  const starts = Int32Array.from(search.activities, activity => activity.fixedStart ?? 0);
  const finishes = Int32Array.from(search.activities, (activity, i) => at(starts, i) + activity.duration);
  if (plan.activities.length !== activities.length) return undefined;
  for (const { id, start, finish, resumed } of plan.activities) {
    const i = compiled.position.get(id);
    if (i === undefined) return undefined;
    const { isMilestone, isClosing } = at(activities, i);
    starts[i] = dayOf(resumed ?? start) - first + (isMilestone && isClosing ? 1 : 0);
    finishes[i] = isMilestone ? at(starts, i) : dayOf(finish) - first + 1;
  }
  return { starts, finishes };
}
