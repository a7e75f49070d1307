import { dayOf } from '../../calendar';
import { at } from '../compile/at';
import { compile } from '../compile/compile';
import type { Compiled } from '../compile/compiled';
import type { ScheduleProblem } from '../model';
import type { ScheduleResult } from '../result';
import type { TrialScheduler } from '../trial-scheduler';
import { chainPass, openRuns } from './chain-pass';
import { resourceChains } from './resource-chains';

/** A scheduler for trials, with what turns its moments into dates. */
export interface ChainScheduler extends TrialScheduler {
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
 * @param durations in `decode`: days the activity holds, weather allowance included where the plan keeps one.
 * A trial with an absent duration has no finish: NaN.
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
  const days = Int32Array.from(search.activities, activity => activity.duration);
  const held = new Int32Array(days.length);
  const plannedFinish = pass.run(days, held, 0);
  const count = problem.activities.length;
  const flag = (is: (a: Compiled['activities'][number]) => boolean) =>
    Uint8Array.from(activities, a => Number(is(a)));
  const { placeOf } = pass;
  // The first place that the last pass left undone: none, unless a trial was given up half way.
  let stale = days.length;
  const isUnderWay = flag(a => a.state !== 'planned');
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
    plannedFinish,
    decode(durations, notBefore, starts, finishes) {
      let from = stale;
      stale = 0;
      for (let i = 0; i < count; i++) {
        const duration = durations[i] ?? Number.NaN;
        if (!(duration >= 0)) return Number.NaN;
        const whole = isUnderWay[i] === 1 ? (days[i] ?? 0) : Math.ceil(duration - DAY_TOLERANCE);
        const least = Math.ceil((notBefore[i] ?? 0) - DAY_TOLERANCE);
        if (whole === days[i] && least === held[i]) continue;
        days[i] = whole;
        held[i] = least;
        const place = placeOf[i] ?? 0;
        if (place < from) from = place;
      }
      const finish = pass.run(days, held, from);
      stale = days.length;
      starts.set(pass.starts.subarray(0, count));
      finishes.set(pass.finishes.subarray(0, count));
      return finish;
    },
  };
}

/** Fractions of a day closer to a whole day than this are rounding. */
const DAY_TOLERANCE = 1e-9;

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
