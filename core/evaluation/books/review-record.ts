import type { Cents } from '../../cash-flow';
import { roundToCents } from '../../money';
import type { ProjectRecord } from '../../project';
import type { ReviewInput } from '../../review';
import { orderStatistic, shareUpTo, sorted, type SimulationResult } from '../../risk';
import { centsOfFigure } from './grant-input';

/** What the record of the document tells the review; what it is silent about is left out. */
export function recordOfReview(
  record: ProjectRecord | undefined,
): Pick<ReviewInput, 'approval' | 'earlier' | 'independent' | 'excludedStages' | 'lessons'> {
  if (record === undefined) return { excludedStages: [], lessons: [] };
  const { approval, independent, leftOut, lessons } = record;
  const earlier = earlierOf(record);
  return {
    ...(approval && { approval: { by: approval.by, on: approval.on } }),
    ...(earlier !== undefined && { earlier }),
    ...(independent && {
      independent: {
        total: centsOfFigure(independent.total),
        ...(independent.explanation !== undefined && { explanation: independent.explanation }),
      },
    }),
    excludedStages: leftOut.map(one => one.stage),
    lessons: lessons.map(one => one.title),
  };
}

function earlierOf({ earlier, isFirstEstimate }: ProjectRecord): ReviewInput['earlier'] {
  if (earlier === undefined) return isFirstEstimate === true ? 'first' : undefined;
  return {
    total: centsOfFigure(earlier.total),
    steps: earlier.steps.map(step => ({ title: step.title, amount: centsOfFigure(step.amount) })),
  };
}

/** What only a simulation tells the review. */
export type SimulationOfReview = Pick<
  ReviewInput,
  'drivers' | 'planPercentile' | 'budgetPercentile' | 'costAtP80' | 'chanceOfFinish'
>;

/** What the trials of an estimate found, with the total, the contingency and the finish that they were held against. */
export interface ReviewTrials {
  readonly total: Cents;
  readonly contingency: Cents | undefined;
  readonly finish: string | undefined;
  readonly found: SimulationOfReview;
}

/** What a simulation tells the review: drivers, where the plan and the budget stand, and the chance of the finish. */
export function simulationOfReview(
  { drivers, cost, finish, samples }: SimulationResult,
  total: Cents,
  contingency: Cents | undefined,
): SimulationOfReview {
  const rising = sorted(samples.total);
  const hasTrials = rising.length > 0;
  return {
    drivers: drivers.map(driver => driver.title),
    ...(hasTrials && { costAtP80: roundToCents(orderStatistic(rising, 0.8)).cents }),
    ...(hasTrials &&
      contingency !== undefined && {
        budgetPercentile: 100 * shareUpTo(rising, (total + contingency) / 100),
      }),
    ...(cost.planShare !== undefined && { planPercentile: 100 * cost.planShare }),
    ...(finish.planShare !== undefined && { chanceOfFinish: finish.planShare }),
  };
}
