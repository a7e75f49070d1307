import { dollarsOf, type Money } from '../../money';
import { moneySheet } from '../../estimate';
import {
  leastCrewSteps,
  levellingSteps,
  usualSchedules,
  verifySchedule,
  type LevelledSchedule,
  type LevelProgress,
  type ScheduleResult,
} from '../../scheduling';
import type { Finding } from '../../base';
import { datesOf, hazardousWaste, pricedGeneration } from '../generator';
import type { Evaluation } from '../evaluate';
import type { WholeParts } from '../risk/parts';
import { itemTimings, wholeSpan } from '../timing';
import { hireCosts } from './hire-cost';
import { crewsUsed, type CrewsUsed } from './use';

/** How the crews are asked to be planned, and how it goes on. */
export interface LevellingAsk {
  /** With a last day, as few crews as keep it; without one the finish stays and the crews are evened out. */
  readonly leastCrewBy?: string;
  readonly seed: number;
}

/** The plan before and after, by crew, with what hiring and releasing costs and what the estimate comes to. */
export interface LevelledPlan {
  readonly kind: 'level' | 'least-crew';
  /** The last day asked for, with `least-crew`. */
  readonly by?: string;
  readonly before: CrewsUsed;
  readonly after: CrewsUsed;
  /** Hiring and releasing before less after, dollars; it is no part of the estimate. */
  readonly saved: number;
  readonly peopleBefore: number;
  readonly peopleAfter: number;
  /** The owner's total with the dates of before and of after, dollars; absent when a figure of it is. */
  readonly totalBefore?: number;
  readonly totalAfter?: number;
  readonly schedule: ScheduleResult;
  /** Activities that moved: from and to, the first of the new dates first. */
  readonly moved: readonly Moved[];
  /** What hiring and releasing rests on, in words. */
  readonly basis: string;
  /** What the day-by-day check of the new dates finds. */
  readonly findings: readonly Finding[];
}

export interface Moved {
  readonly id: string;
  readonly title: string;
  readonly from: string;
  readonly to: string;
}

/** A plan that cannot be: the last day comes before the earliest finish found. */
export interface NoPlan {
  readonly earliest: string;
}

/** Passes of each try with fewer crews; the search begins with as many as the plan itself. */
const SCHEDULES_EACH = 200;

/**
 * The crews of a plan evened out with the finish kept, or made as few as a last day allows. The weight of each kind of
 * crew is what hiring and letting go one of it costs; public staff stay whatever the plan.
 * It goes on step by step, so that the caller can tell how far it is or leave off.
 * @returns undefined without a schedule or prices.
 */
export function* levelledPlan(
  evaluation: Evaluation,
  ask: LevellingAsk,
): Generator<LevelProgress, LevelledPlan | NoPlan | undefined> {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const parts: WholeParts = { ...estimate, money: estimate.money };
  const costs = hireCosts(parts).byCrew;
  const { leastCrewBy, seed } = ask;
  const schedules = usualSchedules(parts.problem.activities.length);
  const level = { seed, schedules, objective: 'hire-and-release', weights: costs } as const;
  const result =
    leastCrewBy === undefined
      ? yield* levellingSteps(parts.problem, level)
      : (yield* leastCrewSteps(parts.problem, {
          seed,
          schedules,
          schedulesEach: SCHEDULES_EACH,
          finishBy: leastCrewBy,
          unitCosts: costs,
        }))?.result;
  if (result === undefined) return { earliest: wholeSpan(parts.schedule).finish };
  const { uses } = result;
  return uses && compared(parts, { ...result, uses }, ask);
}

function compared(
  parts: WholeParts,
  result: LevelledSchedule & Required<Pick<LevelledSchedule, 'uses'>>,
  { leastCrewBy }: LevellingAsk,
): LevelledPlan {
  const costs = hireCosts(parts);
  const titles = new Map(parts.problem.resources.map(({ id, title }) => [id, title]));
  const before = crewsUsed(result.uses.before, costs, titles);
  const after = crewsUsed(result.uses.after, costs, titles);
  const [totalBefore, totalAfter] = [totalOf(parts, parts.schedule), totalOf(parts, result)];
  return {
    kind: leastCrewBy === undefined ? 'level' : 'least-crew',
    ...(leastCrewBy === undefined ? {} : { by: leastCrewBy }),
    before,
    after,
    saved: Math.round((before.cost - after.cost) * 100) / 100,
    peopleBefore: parts.schedule.peakCrew,
    peopleAfter: result.peakCrew,
    ...(totalBefore === undefined ? {} : { totalBefore }),
    ...(totalAfter === undefined ? {} : { totalAfter }),
    schedule: result,
    moved: movedBetween(parts.schedule, result),
    basis: `${costs.hours.value} paid hours for each person who comes and goes (${costs.hours.basis}: ${costs.hours.source}), at the rate of the crew. It is counted each time more crews are at work than on the work day before. It is not part of the estimate.`,
    findings: verifySchedule(parts.problem, result),
  };
}

function movedBetween(before: ScheduleResult, after: ScheduleResult): Moved[] {
  const starts = new Map(before.activities.map(({ id, start }) => [id, start]));
  return after.activities
    .flatMap(({ id, title, start }): Moved[] => {
      const from = starts.get(id);
      return from === undefined || from === start ? [] : [{ id, title, from, to: start }];
    })
    .toSorted((a, b) => a.to.localeCompare(b.to) || a.id.localeCompare(b.id));
}

/** The owner's total with other dates: the money sheet again. */
function totalOf(parts: WholeParts, schedule: ScheduleResult): number | undefined {
  const { input, work, planned, quoted } = parts;
  const timings = itemTimings(planned, schedule, input.prices);
  const generation = pricedGeneration(input.library, hazardousWaste(input, work, datesOf(schedule)));
  const money = moneySheet(input, work, timings, quoted?.quotes ?? new Map(), generation);
  const total: Money | undefined = money.result.money(money.sums.total);
  return total && dollarsOf(total);
}
