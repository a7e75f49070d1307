import { at } from '../base';
import { AS_IT_IS } from './adjustment';
import { isCollapsed } from './distributions';
import type { TrialPlan } from './latin-hypercube';
import { momentsOf } from './moments';
import type { PreparedRun } from './prepared';
import { adjustedRuns, type Waves } from './simulation';

/** Why the mean of the runs is not the plan: each part in dollars and in calendar days; the parts add up to the whole. */
export interface PlanGap {
  readonly whole: GapPart;
  /** By events of the register that happen. */
  readonly events: GapPart;
  /** By drivers off their likely factor. */
  readonly drivers: GapPart;
  /** By ranges that reach further to one side of the likely value than to the other. */
  readonly ranges: GapPart;
  /** What is left with all of them at their likely value: waiting for weather, and how steps and months fall. */
  readonly rest: GapPart;
}

/** Mean difference in dollars and calendar days. */
export interface GapPart {
  readonly cost: number;
  readonly days: number;
}

/**
 * Takes the mean of the runs apart with the same draws: without events, then without drivers, then without ranges.
 * @param most trials at most.
 */
export function* planGap(prepared: PreparedRun, plan: TrialPlan, most: number = plan.trials): Waves<PlanGap> {
  const events = prepared.events.map(event => event.id);
  const drivers = prepared.drivers.map(driver => driver.id);
  const ranges = prepared.inputs.filter(i => !isCollapsed(i.distribution)).map(input => input.id);
  const noEvents = { held: events };
  const noDrivers = { held: [...events, ...drivers] };
  const nothing = { held: [...events, ...drivers, ...ranges] };
  const runs = yield* adjustedRuns(plan, [AS_IT_IS, noEvents, noDrivers, nothing], most);
  const meansOf = (run: number): GapPart => {
    const { total, finish } = at(runs, run);
    return { cost: momentsOf(total).mean, days: momentsOf(finish).mean };
  };
  const [all, withoutEvents, withoutDrivers, likely] = [meansOf(0), meansOf(1), meansOf(2), meansOf(3)];
  const planned = { cost: prepared.plan.total, days: prepared.plan.finish };
  return {
    whole: less(all, planned),
    events: less(all, withoutEvents),
    drivers: less(withoutEvents, withoutDrivers),
    ranges: less(withoutDrivers, likely),
    rest: less(likely, planned),
  };
}

function less(a: GapPart, b: GapPart): GapPart {
  return { cost: a.cost - b.cost, days: a.days - b.days };
}
