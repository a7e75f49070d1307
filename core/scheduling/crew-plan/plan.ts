import type { WorkCalendar } from '../../calendar';
import type { ScheduleResult } from '../result';
import type { ScheduleOptions } from '../schedule';

/** Another way to work: longer or more shifts, Saturdays, as calendars that take the place of the project's. */
export interface ShiftChoice {
  readonly id: string;
  readonly title: string;
  readonly calendars: Readonly<Record<string, WorkCalendar>>;
}

/** One way to run the project: a crew for every activity, the shifts, the first day. */
export interface CrewPlan {
  /** Position in `modes` by activity, in the order of the problem. */
  readonly modes: readonly number[];
  /** Absent: the calendars of the problem. */
  readonly shift?: string;
  readonly start: string;
}

/** A plan with what it comes to. */
export interface PricedPlan {
  readonly plan: CrewPlan;
  /** Last day worked. */
  readonly finish: string;
  /** Calendar days from the plan's own first day to its last. */
  readonly calendarDays: number;
  /** In the unit of the cost function. */
  readonly cost: number;
}

export interface CrewPlanOptions extends ScheduleOptions {
  /**
   * The total cost of a plan: direct, by the day, and what weather is expected to cost. Called once a plan.
   * @param timed full dates are worked out only when asked for.
   */
  readonly cost: (plan: CrewPlan, timed: TimedPlan) => number;
  readonly starts?: readonly string[];
  readonly shifts?: readonly ShiftChoice[];
  /** The last day by which all must be finished. */
  readonly finishBy?: string;
  /** Plans to try at most when there are too many to try all. */
  readonly trials?: number;
}

/** When a plan finishes, and on demand all of its dates. */
export interface TimedPlan {
  readonly finish: string;
  readonly calendarDays: number;
  readonly result: () => ScheduleResult;
}

/** The cheapest plan and the whole curve of cost over time. */
export interface CrewPlanResult {
  /** Absent when no plan keeps the last day. */
  readonly best?: PricedPlan;
  /** The cheapest plan found for every finish, the earliest first. */
  readonly curve: readonly PricedPlan[];
  /** The plans of the curve that no other plan beats in both cost and time. */
  readonly frontier: readonly PricedPlan[];
  readonly tried: number;
  /** Whether every plan was tried, so that the curve is exact but for the schedules' own gap. */
  readonly isComplete: boolean;
}
