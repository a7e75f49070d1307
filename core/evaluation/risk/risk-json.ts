import { dayOf, isoOf } from '../../calendar';
import { dollarsOf, roundToCents } from '../../money';
import {
  chanceOfMissing,
  contingencyAt,
  GRANT_CONTINGENCY_NOTE,
  jointView,
  orderStatistic,
  sorted,
  type SimulationResult,
} from '../../risk';
import type { Finding } from '../../base';
import type { Evaluation } from '../evaluate';
import type { JsonObject } from '../json';
import type { PreparedEstimate } from './prepare';

/** What a simulation found, as the command line prints it. Finish dates are last days worked. */
export function riskJson(
  { scenario, project, estimate }: Evaluation,
  prepared: PreparedEstimate,
  result: SimulationResult,
  seconds: number,
  findings: readonly Finding[],
): JsonObject {
  const { run, first } = prepared;
  const [cost, finish] = [sorted(result.samples.total), sorted(result.samples.finish)];
  const date = (day: number) => isoOf(first + day - 1);
  const contingency = contingencyAt(run, result, 0.8);
  const budget = estimate?.money?.result.money(estimate.money.sums.budget);
  const money = budget === undefined ? run.plan.total : dollarsOf(budget);
  const { deadline } = project.calendars;
  const lastDay = deadline === undefined ? run.plan.finish : dayOf(deadline) - first + 1;
  const joint = jointView(result, money, lastDay);
  return {
    scenario: scenario.id,
    trials: result.trials,
    seed: result.seed,
    cost: {
      mean: cents(result.cost.mean),
      sd: cents(result.cost.standardDeviation),
      p10: orderStatistic(cost, 0.1),
      p50: orderStatistic(cost, 0.5),
      p80: orderStatistic(cost, 0.8),
      p90: orderStatistic(cost, 0.9),
    },
    finish: {
      p10: date(orderStatistic(finish, 0.1)),
      p50: date(orderStatistic(finish, 0.5)),
      p80: date(orderStatistic(finish, 0.8)),
      p90: date(orderStatistic(finish, 0.9)),
    },
    jointConfidence: share(joint.joint),
    jointOf: { budget: money, finish: date(lastDay), sentence: joint.sentence },
    contingencyAtP80: contingency.amount,
    contingencyLines: contingency.lines.filter(line => line.amount > 0),
    contingencyNote: GRANT_CONTINGENCY_NOTE,
    plan: { total: run.plan.total, finish: date(run.plan.finish) },
    planPercentile: share(result.cost.planShare),
    planFinishPercentile: share(result.finish.planShare),
    ...(deadline === undefined ? {} : { chanceOfGrantPeriod: share(1 - chanceOfMissing(result, lastDay)) }),
    chanceOfAnotherSeason: share(result.anotherSeason),
    drivers: result.drivers.map(driver => ({
      id: driver.id,
      title: driver.title,
      kind: driver.kind,
      contribution: share(driver.contribution),
      finishContribution: share(driver.finishContribution),
      swing: cents(driver.costAtHigh - driver.costAtLow),
    })),
    ranges: { given: prepared.ranged, drawn: prepared.drawn },
    events: run.events.length,
    seconds,
    findings,
  };
}

function cents(dollars: number): number {
  return dollarsOf(roundToCents(dollars));
}

/** A share to four decimals; absent when there is none. */
function share(value: number | undefined): number | undefined {
  return value === undefined || Number.isNaN(value) ? undefined : Math.round(value * 1e4) / 1e4;
}
