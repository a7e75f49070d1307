import { at, valueAt } from '../base';
import type { TrialPlan } from './latin-hypercube';
import { momentsOf } from './moments';
import { orderStatistic, sorted } from './percentiles';
import type { PreparedRun } from './prepared';
import { adjustedRuns, type Waves } from './simulation';
import type { Trials } from './trials';

/** What one mitigation buys: same draws, with it less without it. Its own price is in the cost. */
export interface MitigationValue {
  readonly event: string;
  readonly title: string;
  /** Its price, dollars. */
  readonly cost: number;
  /** Change of mean cost, dollars (below zero: it pays), with the standard error of the mean difference. */
  readonly meanCost: number;
  readonly standardError: number;
  /** Change of P80 of cost, dollars, and of P80 of the finish, calendar days. */
  readonly p80Cost: number;
  readonly p80Finish: number;
}

/** Tries each mitigation of the register by itself, with common random numbers. @param most trials at most. */
export function* mitigationValues(
  prepared: PreparedRun,
  plan: TrialPlan,
  most: number = plan.trials,
): Waves<MitigationValue[]> {
  const offers = prepared.events.flatMap(({ id, mitigation }) =>
    mitigation === undefined ? [] : [{ id, mitigation }],
  );
  if (offers.length === 0) return [];
  const runs = yield* adjustedRuns(plan, [{}, ...offers.map(o => ({ mitigated: [o.id] }))], most);
  return offers.map(({ id, mitigation: { title, cost } }, i) => ({
    event: id,
    title,
    cost,
    ...difference(at(runs, 0), at(runs, i + 1)),
  }));
}

/** What a second run with the same draws differs by; mean with its standard error, and both P80. */
export function difference(base: Trials, other: Trials) {
  const { mean, variance, count } = momentsOf(other.total.map((x, t) => x - valueAt(base.total, t)));
  const p80 = (values: Float64Array) => orderStatistic(sorted(values), 0.8);
  return {
    meanCost: mean,
    standardError: Math.sqrt(variance / count),
    p80Cost: p80(other.total) - p80(base.total),
    p80Finish: p80(other.finish) - p80(base.finish),
  };
}
