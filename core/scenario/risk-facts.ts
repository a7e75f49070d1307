import { valueAt } from '../base';
import { dayOf, isoOf } from '../calendar';
import { awardChance, grantEnd, prepareRisk, type AwardChance, type Evaluation } from '../evaluation';
import { dollarsOf } from '../money';
import { chanceOfMissing, orderStatistic, simulate, sorted, type SimulationResult } from '../risk';
import { summaryOf } from './totals';

/** How sure cost and finish of a scenario are, from one simulation. Money in dollars. */
export interface RiskFacts {
  readonly scenario: string;
  readonly trials: number;
  readonly seed: number;
  readonly p50: number;
  readonly p80: number;
  readonly p90: number;
  readonly finishP50: string;
  readonly finishP80: string;
  /** Chance that the finish lies within the deadline of the document; absent without one. */
  readonly chanceOfDeadline?: number;
  /** Chance that the grant period ends before all is done; absent without one. */
  readonly missesGrant?: number;
  /** Chance that the tow or the sinking needs a later season than planned; absent when it never does. */
  readonly anotherSeason?: number;
  /** How likely the cost stays inside the award itself; absent without one. */
  readonly award?: AwardChance;
  /** The largest drivers of cost, each with its share of the variance. */
  readonly drivers: readonly { readonly title: string; readonly share: number }[];
  /** Cost of each trial: trials of two scenarios with one seed share their draws. */
  readonly cost: Float64Array;
}

/** How many drivers are told. */
const DRIVERS = 8;

/**
 * Simulates a scenario. The same seed draws the same luck for the same figure in every scenario, so that the trials of
 * two scenarios can be taken from each other one by one.
 * @param plan other trials and another seed than the project says.
 * @returns nothing when the estimate cannot be simulated, or when told to stop.
 */
export function riskFacts(
  evaluation: Evaluation,
  plan: { readonly trials?: number; readonly seed?: number } = {},
  shouldStop?: () => boolean,
): RiskFacts | undefined {
  const { prepared } = prepareRisk(evaluation);
  if (prepared === undefined) return undefined;
  const { trials, seed } = prepared.section;
  const result = simulate(prepared.run, { trials, seed, ...plan, ...(shouldStop && { shouldStop }) });
  return result && factsOf(evaluation, result, prepared.first);
}

/** The facts of a simulation that has been run elsewhere. @param first day number of the horizon start. */
export function factsOf(evaluation: Evaluation, result: SimulationResult, first: number): RiskFacts {
  const [cost, finish] = [sorted(result.samples.total), sorted(result.samples.finish)];
  const date = (day: number) => isoOf(first + day - 1);
  const { deadline } = evaluation.project.calendars;
  const end = grantEnd(evaluation);
  const missing = (iso: string) => chanceOfMissing(result, dayOf(iso) - first + 1);
  const contingency = summaryOf(evaluation)?.contingency;
  const award = awardChance(
    evaluation.project,
    result.samples,
    result.cost.plan,
    contingency && dollarsOf(contingency),
  );
  return {
    scenario: evaluation.scenario.id,
    trials: result.trials,
    seed: result.seed,
    p50: orderStatistic(cost, 0.5),
    p80: orderStatistic(cost, 0.8),
    p90: orderStatistic(cost, 0.9),
    finishP50: date(orderStatistic(finish, 0.5)),
    finishP80: date(orderStatistic(finish, 0.8)),
    ...(deadline !== undefined && { chanceOfDeadline: 1 - missing(deadline) }),
    ...(end !== undefined && { missesGrant: missing(end) }),
    ...(result.anotherSeason > 0 && { anotherSeason: result.anotherSeason }),
    ...(award !== undefined && { award }),
    drivers: result.drivers
      .slice(0, DRIVERS)
      .map(({ title, contribution }) => ({ title, share: contribution })),
    cost: result.samples.total,
  };
}

/** Two scenarios under the same luck. */
export interface PairedRisk {
  readonly from: string;
  readonly to: string;
  /** The second P80 less the first, in dollars. */
  readonly p80Difference: number;
  /** The difference of cost trial by trial: its middle, and what holds in 80 of 100 trials at most. */
  readonly median: number;
  readonly atMost: number;
  /** Share of the trials in which the first costs less. */
  readonly firstCheaper: number;
}

/** Compares two simulations trial by trial. @returns nothing when they were not run alike. */
export function pairedRisk(first: RiskFacts, second: RiskFacts): PairedRisk | undefined {
  if (first.seed !== second.seed || first.cost.length !== second.cost.length) return undefined;
  const apart = first.cost.map((cost, trial) => valueAt(second.cost, trial) - cost);
  const inOrder = sorted(apart);
  return {
    from: first.scenario,
    to: second.scenario,
    p80Difference: second.p80 - first.p80,
    median: orderStatistic(inOrder, 0.5),
    atMost: orderStatistic(inOrder, 0.8),
    firstCheaper: apart.filter(amount => amount > 0).length / apart.length,
  };
}
