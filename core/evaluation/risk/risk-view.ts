import type { Finding } from '../../base';
import { dayOf, isoOf } from '../../calendar';
import {
  amongPastProjects,
  chanceOfMissing,
  contingencyAt,
  COST_GROWTH,
  equalChanceLine,
  GRANT_CONTINGENCY_NOTE,
  jointView,
  orderStatistic,
  sorted,
  type Contingency,
  type DriverRow,
  type JointView,
  type MitigationValue,
  type PlanGap,
  type SimulationResult,
  type Spread,
  type SurveyValue,
} from '../../risk';
import { inHundred } from '../../units';
import type { Evaluation } from '../evaluate';
import { awardChance, type AwardChance } from './award-room';
import { contingencyOf, type PolicyContingency } from './policy-contingency';
import { gapSentence, safeView } from './plan-words';
import type { PreparedEstimate } from './prepare';

/** A share of the runs and the date they end by. */
export interface DatePoint {
  readonly share: number;
  readonly date: string;
}

/** How the finish is spread, in dates. */
export interface FinishView {
  readonly percentiles: readonly DatePoint[];
  readonly curve: readonly DatePoint[];
  readonly plan: string;
  readonly planShare: number | undefined;
}

/** An event of the register as a row. */
export interface RegisterRow {
  readonly id: string;
  readonly title: string;
  readonly owner: string | undefined;
  readonly probability: number;
  /** What it moves: lines in dollars and activities in work days, by id. */
  readonly lines: readonly string[];
  readonly activities: readonly string[];
  readonly contribution: number | undefined;
  /** Its mitigation, and what that buys once it was tried. */
  readonly mitigation:
    { readonly title: string; readonly cost: number; readonly buys: MitigationValue | undefined } | undefined;
  readonly note: string | undefined;
}

/** Where the runs stand beside what past hulls cost over their middle estimate. */
export interface GrowthComparison {
  /** Cost over plan of the runs. */
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Growth of past hulls: least, middle, most. */
  readonly least: number;
  readonly middle: number;
  readonly most: number;
  readonly of: number;
  /** Share of past hulls whose growth the P80 of the runs would have covered. */
  readonly coveredAtP80: number;
}

/** Everything about how sure an estimate is, ready to be shown. Costs in dollars, finishes as last days worked. */
export interface RiskView {
  readonly scenario: string;
  readonly trials: number;
  readonly trialsAsked: number;
  readonly withoutAnswer: number;
  readonly seed: number;
  readonly confidence: number;
  readonly cost: Spread;
  readonly planSentence: string;
  readonly finish: FinishView;
  /** Absent where no source of the funding reimburses what was paid. */
  readonly cashNeed: Spread | undefined;
  /** Inside the budget, or the plan’s cost without one, and the deadline, or else the end of the grant, or else the plan’s finish. */
  readonly joint: JointView & { readonly budget: number; readonly date: string };
  /** Budgets and dates that hold together with the confidence asked for. */
  readonly frontier: readonly { readonly date: string; readonly budget: number }[];
  readonly contingencyAtP80: Contingency;
  readonly contingency: PolicyContingency;
  readonly contingencyNote: string;
  readonly grantPeriod: { readonly end: string; readonly chanceOfMissing: number } | undefined;
  /** How likely the cost stays inside the award itself; absent without one. */
  readonly award: AwardChance | undefined;
  readonly deadline: { readonly date: string; readonly chanceOfMissing: number } | undefined;
  readonly chanceOfAnotherSeason: number;
  readonly drivers: readonly DriverRow[];
  /** Activities by how often they drive the finish, the most often first; those that never do are left out. */
  readonly drivesFinish: readonly {
    readonly activity: string;
    readonly title: string;
    readonly share: number;
  }[];
  readonly register: readonly RegisterRow[];
  readonly surveys: readonly SurveyValue[];
  readonly growth: GrowthComparison;
  /** What is wrong with what was drawn: figures counted twice, correlations left out, trials without an answer. */
  readonly findings: readonly Finding[];
  /** The budget and the date that hold together with the confidence asked for, each as safe as the other. */
  readonly safe:
    | { readonly budget: number; readonly date: string; readonly joint: number; readonly sentence: string }
    | undefined;
  /** Why the plan holds as seldom as it does; absent until it was taken apart. */
  readonly gap: (PlanGap & { readonly sentence: string }) | undefined;
}

/** What mitigations and surveys were found to be worth, when they were tried. */
export interface WhatIfs {
  readonly mitigations?: readonly MitigationValue[];
  readonly surveys?: readonly SurveyValue[];
  readonly gap?: PlanGap;
}

/** The simulation of an evaluation as rows for screen and papers. */
export function riskView(
  evaluation: Evaluation,
  prepared: PreparedEstimate,
  result: SimulationResult,
  whatIfs: WhatIfs = {},
): RiskView {
  const { run, first, section } = prepared;
  const { project, estimate, scenario } = evaluation;
  const confidence = Number(section.confidence);
  const date = (day: number) => isoOf(first + day - 1);
  const dayNumber = (iso: string) => dayOf(iso) - first + 1;
  const missing = (iso: string | undefined) =>
    iso === undefined ? undefined : chanceOfMissing(result, dayNumber(iso));
  const contingency = contingencyOf(project, estimate, run, result);
  const budget = contingency.budget ?? run.plan.total;
  const { deadline } = project.calendars;
  const end = grantEnd(evaluation);
  const last = deadline ?? end;
  const lastDay = last === undefined ? run.plan.finish : dayNumber(last);
  const [missesGrant, missesDeadline] = [missing(end), missing(deadline)];
  return {
    scenario: scenario.id,
    trials: result.trials,
    trialsAsked: result.trialsAsked,
    withoutAnswer: result.withoutAnswer,
    seed: result.seed,
    confidence,
    cost: result.cost,
    planSentence: `The plan figure is ${result.cost.planShare === undefined ? 'absent' : inHundred(result.cost.planShare)} in 100.`,
    finish: finishView(result.finish, date),
    cashNeed: result.cashNeed,
    joint: { ...jointView(result, budget, lastDay), budget, date: date(lastDay) },
    frontier: equalChanceLine(result, confidence).map(({ finish, total }) => ({
      date: date(finish),
      budget: total,
    })),
    contingencyAtP80: contingencyAt(run, result, 0.8),
    contingency,
    contingencyNote: GRANT_CONTINGENCY_NOTE,
    grantPeriod:
      end === undefined || missesGrant === undefined ? undefined : { end, chanceOfMissing: missesGrant },
    award: awardChance(project, result.samples, run.plan.total, contingency.amount),
    deadline:
      deadline === undefined || missesDeadline === undefined
        ? undefined
        : { date: deadline, chanceOfMissing: missesDeadline },
    chanceOfAnotherSeason: result.anotherSeason,
    drivers: result.drivers,
    drivesFinish: drivingRows(evaluation, result),
    register: registerRows(prepared, result, whatIfs),
    surveys: whatIfs.surveys ?? [],
    growth: growthComparison(prepared, result),
    findings: result.findings,
    safe: safeView(result, confidence, date),
    gap: whatIfs.gap && { ...whatIfs.gap, sentence: gapSentence(whatIfs.gap) },
  };
}

function finishView(
  { percentiles, curve, plan, planShare }: Spread,
  date: (day: number) => string,
): FinishView {
  const points = (of: readonly { share: number; value: number }[]) =>
    of.map(({ share, value }) => ({ share, date: date(value) }));
  return {
    percentiles: points(percentiles),
    curve: points(curve),
    plan: plan === undefined ? '' : date(plan),
    planShare,
  };
}

/** The first day on which a period of the funding ends. */
export function grantEnd({ project }: Pick<Evaluation, 'project'>): string | undefined {
  const ends = (project.funding?.sources ?? []).flatMap(({ period }) => (period ? [period.finish] : []));
  return ends.toSorted()[0];
}

function drivingRows({ estimate }: Evaluation, { drivesFinish = [] }: SimulationResult) {
  const titles = new Map((estimate?.items ?? []).map(item => [item.id, item.title]));
  return drivesFinish
    .filter(({ share }) => share > 0)
    .toSorted((a, b) => b.share - a.share)
    .map(({ activity, share }) => ({ activity, title: titles.get(activity) ?? activity, share }));
}

function registerRows({ run }: PreparedEstimate, result: SimulationResult, whatIfs: WhatIfs): RegisterRow[] {
  return run.events.map(({ id, title, owner, probability, costs, delays, mitigation, note }) => ({
    id,
    title,
    owner,
    probability,
    lines: costs.map(cost => cost.line),
    activities: delays.map(delay => delay.activity),
    contribution: result.drivers.find(driver => driver.id === id)?.contribution,
    mitigation: mitigation && {
      title: mitigation.title,
      cost: mitigation.cost,
      buys: whatIfs.mitigations?.find(value => value.event === id),
    },
    note,
  }));
}

function growthComparison({ run }: PreparedEstimate, result: SimulationResult): GrowthComparison {
  const rising = sorted(result.samples.total);
  const at = (share: number) => orderStatistic(rising, share) / run.plan.total;
  const { covered, of, middleGrowth } = amongPastProjects(at(0.8));
  const growths = COST_GROWTH.map(past => past.growth);
  return {
    p10: at(0.1),
    p50: at(0.5),
    p90: at(0.9),
    least: Math.min(...growths),
    middle: middleGrowth,
    most: Math.max(...growths),
    of,
    coveredAtP80: covered / of,
  };
}
