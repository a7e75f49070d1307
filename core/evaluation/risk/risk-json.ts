import { dollarsOf, roundToCents } from '../../money';
import { orderStatistic, sorted, type SimulationResult, type Spread } from '../../risk';
import type { Finding } from '../../base';
import type { Evaluation } from '../evaluate';
import type { JsonObject } from '../json';
import type { PreparedEstimate } from './prepare';
import { riskView, type RegisterRow, type RiskView, type WhatIfs } from './risk-view';

/** What a simulation found, as the command line prints it; `seconds` is the one field that two equal runs may not share. Finish dates are last days worked. */
export function riskJson(
  evaluation: Evaluation,
  prepared: PreparedEstimate,
  result: SimulationResult,
  seconds: number,
  findings: readonly Finding[],
  whatIfs: WhatIfs = {},
): JsonObject {
  const view = riskView(evaluation, prepared, result, whatIfs);
  const { run } = prepared;
  const { cost, contingencyAtP80, grantPeriod, award, deadline } = view;
  return {
    scenario: view.scenario,
    trials: view.trials,
    seed: view.seed,
    confidence: view.confidence,
    cost: spreadJson(cost, result.samples.total),
    finish: finishJson(view),
    ...(view.cashNeed && result.samples.cashNeed
      ? { cashNeed: { ...spreadJson(view.cashNeed, result.samples.cashNeed), plan: view.cashNeed.plan } }
      : {}),
    jointConfidence: share(view.joint.joint),
    jointOf: { budget: view.joint.budget, finish: view.joint.date, sentence: view.joint.sentence },
    insideMoney: share(view.joint.insideMoney),
    insideDate: share(view.joint.insideDate),
    frontier: view.frontier,
    contingencyAtP80: contingencyAtP80.amount,
    contingencyLines: contingencyAtP80.lines.filter(line => line.amount > 0),
    contingency: { ...view.contingency, reaches: share(view.contingency.reaches) },
    contingencyNote: view.contingencyNote,
    plan: { total: run.plan.total, finish: view.finish.plan },
    planPercentile: share(cost.planShare),
    planSentence: view.planSentence,
    planFinishPercentile: share(view.finish.planShare),
    ...(grantPeriod && {
      grantPeriodEnd: grantPeriod.end,
      chanceOfMissingGrantPeriod: share(grantPeriod.chanceOfMissing),
    }),
    ...(award && {
      awardBudget: cents(award.budget),
      awardHoldsContingency: award.holdsContingency,
      chanceInsideAward: share(award.chance),
    }),
    ...(deadline && {
      deadline: deadline.date,
      chanceOfMissingDeadline: share(deadline.chanceOfMissing),
    }),
    chanceOfAnotherSeason: share(view.chanceOfAnotherSeason),
    drivers: driversJson(view),
    drivesFinish: view.drivesFinish.map(row => ({ ...row, share: share(row.share) })),
    register: view.register.map(registerJson),
    surveys: view.surveys.map(row => ({
      ...row,
      narrowing: cents(row.narrowing),
      perDollar: share(row.perDollar),
    })),
    growth: growthJson(view),
    ...(view.safe && {
      safe: { ...view.safe, budget: cents(view.safe.budget), joint: share(view.safe.joint) },
    }),
    ...(view.gap && { planGap: gapJson(view.gap) }),
    ranges: { given: prepared.ranged, drawn: prepared.drawn },
    events: run.events.length,
    seconds,
    findings,
  };
}

function spreadJson({ mean, standardDeviation }: Spread, samples: Float64Array): JsonObject {
  const rising = sorted(samples);
  const at = (q: number) => cents(orderStatistic(rising, q));
  return {
    mean: cents(mean),
    sd: cents(standardDeviation),
    p10: at(0.1),
    p50: at(0.5),
    p80: at(0.8),
    p90: at(0.9),
  };
}

function finishJson({ finish }: RiskView): JsonObject {
  const at = (q: number) => finish.percentiles.find(p => p.share === q)?.date;
  return { p10: at(0.1), p50: at(0.5), p80: at(0.8), p90: at(0.9) };
}

function driversJson({ drivers }: RiskView): JsonObject[] {
  return drivers.map(driver => ({
    id: driver.id,
    title: driver.title,
    kind: driver.kind,
    contribution: share(driver.contribution),
    finishContribution: share(driver.finishContribution),
    swing: cents(driver.costAtHigh - driver.costAtLow),
  }));
}

function registerJson(row: RegisterRow): JsonObject {
  const { id, title, owner, probability, lines, activities, contribution, mitigation, note } = row;
  const buys = mitigation?.buys;
  return {
    id,
    title,
    ...(owner === undefined ? {} : { owner }),
    probability,
    lines,
    activities,
    ...(contribution === undefined ? {} : { contribution: share(contribution) }),
    ...(mitigation && {
      mitigation: {
        title: mitigation.title,
        cost: mitigation.cost,
        ...(buys && {
          meanCost: cents(buys.meanCost),
          standardError: cents(buys.standardError),
          p80Cost: cents(buys.p80Cost),
          p80FinishDays: buys.p80Finish,
        }),
      },
    }),
    ...(note === undefined ? {} : { note }),
  };
}

function growthJson({ growth }: RiskView): JsonObject {
  const { p10, p50, p90, least, middle, most, of, coveredAtP80 } = growth;
  return {
    runs: { p10: share(p10), p50: share(p50), p90: share(p90) },
    pastHulls: { of, least, middle: share(middle), most },
    coveredAtP80: share(coveredAtP80),
  };
}

function gapJson({
  whole,
  ranges,
  drivers,
  events,
  rest,
  sentence,
}: NonNullable<RiskView['gap']>): JsonObject {
  const part = ({ cost, days }: typeof whole) => ({ cost: cents(cost), days: Math.round(10 * days) / 10 });
  return {
    whole: part(whole),
    ranges: part(ranges),
    drivers: part(drivers),
    events: part(events),
    rest: part(rest),
    sentence,
  };
}

function cents(dollars: number): number {
  return dollarsOf(roundToCents(dollars));
}

/** A share to four decimals; absent when there is none. */
function share(value: number | undefined): number | undefined {
  return value === undefined || Number.isNaN(value) ? undefined : Math.round(value * 1e4) / 1e4;
}
