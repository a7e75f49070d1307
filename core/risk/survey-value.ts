import type { Adjustment } from './adjustment';
import { orderStatistic, sorted } from './percentiles';
import type { PreparedRun } from './prepared';
import { adjustedRuns, type Waves } from './simulation';
import type { TrialPlan } from './latin-hypercube';

/** What a further survey of one given is worth. */
export interface SurveyValue {
  readonly input: string;
  readonly title: string;
  /** Price of the survey, dollars. */
  readonly cost: number;
  /** By how much P80 of cost comes closer to P50, dollars. */
  readonly narrowing: number;
  /** Narrowing for each dollar of survey. */
  readonly perDollar: number;
}

/**
 * The value of more survey: each given with a survey on offer is narrowed about its mean to the share of its
 * range left after the survey, all else drawn as before, and the distance from P50 to P80 is compared. The mean
 * stays, because nobody knows beforehand which way the survey will move it.
 * @source R. A. Howard, Information value theory, IEEE Trans. Syst. Sci. Cybern. 2 (1966) 22-26 (the idea of
 *   pricing information before it is bought).
 */
export function* surveyValues(
  prepared: PreparedRun,
  plan: TrialPlan,
  most: number = plan.trials,
): Waves<SurveyValue[]> {
  const offers = prepared.inputs.flatMap(({ id, title, survey }) =>
    survey === undefined ? [] : [{ id, title, survey }],
  );
  if (offers.length === 0) return [];
  const asItIs: Adjustment = {};
  const adjustments = [asItIs, ...offers.map(o => ({ narrowed: { [o.id]: o.survey.rangeLeft } }))];
  const [base, ...narrowed] = yield* adjustedRuns(plan, adjustments, most);
  const values = offers.map(({ id, title, survey }, i) => {
    const narrowing = distance(base?.total) - distance(narrowed[i]?.total);
    return { input: id, title, cost: survey.cost, narrowing, perDollar: narrowing / survey.cost };
  });
  return values.sort((a, b) => b.perDollar - a.perDollar);
}

/** From P50 to P80. */
function distance(total: Float64Array = new Float64Array(0)): number {
  const rising = sorted(total);
  return orderStatistic(rising, 0.8) - orderStatistic(rising, 0.5);
}
