import { sinkingDay, type DatedActivity, type Evaluation } from '../../evaluation';
import type { Money } from '../../money';
import { decisionOf, summaryOf, type Comparison, type DecisionTable, type RiskFacts } from '../../scenario';
import { afterTheSinking, type AfterSinkingCost } from './after-sinking';
import { otherChoices, type OtherChoice } from './alternatives';
import { boardDates } from './board-dates';
import { countyMoney, type CountyMoney } from './county-money';
import { notStudied } from './not-studied';
import { recommendation, type Recommendation } from './recommendation';
import { requestSentence } from './request';
import { trialWords } from './trial-facts';
import { troubles, type Trouble } from './troubles';

/** Everything a board decides by, worked out once: the window and the papers show the same. */
export interface Decision {
  readonly letter: string;
  readonly scenario: string;
  /** What the board is asked for, in one sentence without its amount. */
  readonly request: string;
  /** Whether the scenario meets every clean-up goal; one that does not is never put forward. */
  readonly isPermittable: boolean;
  readonly unmetGoals: readonly string[];
  /** The scenario to choose; nothing when none may be carried out. */
  readonly recommended?: Recommendation;
  readonly table: DecisionTable;
  readonly total: Money | undefined;
  readonly contingency: Money | undefined;
  readonly budget: Money | undefined;
  /** The share of simulated runs that the budget was set to cover; nothing when it was set in another way. */
  readonly budgetCovers?: number;
  /** How sure that is; nothing when no simulation was run. */
  readonly risk?: RiskFacts;
  /** What its trials say against the dates of the plan. */
  readonly againstPlan?: string;
  readonly county: CountyMoney;
  /** The last day of the sinking. */
  readonly sunkOn: DatedActivity | undefined;
  /** The last date that is given for the project. */
  readonly lastDate: string | undefined;
  readonly finish: string | undefined;
  readonly troubles: readonly Trouble[];
  readonly afterSinking: AfterSinkingCost;
  readonly uncheckedShare: number | undefined;
  readonly notStudied: readonly string[];
  readonly otherChoices: readonly OtherChoice[];
  readonly boardDates: readonly DatedActivity[];
}

/**
 * The decision about a scenario, from its evaluation and the comparison with the others.
 * @param comparison all scenarios side by side; without it the scenario stands alone.
 */
export function decisionAbout(evaluation: Evaluation, comparison?: Comparison): Decision {
  const compared = comparison ?? { evaluations: [evaluation], bridges: [], risks: [] };
  const { scenario, letter, estimate } = evaluation;
  const { policy, confidence } = evaluation.project.contingency;
  const table = decisionOf(compared);
  const summary = summaryOf(evaluation);
  const recommended = recommendation(compared, table);
  const risk = compared.risks.find(one => one.scenario === scenario.id);
  const againstPlan = trialWords(risk);
  const unmet = estimate?.unmetGoals.map(({ title }) => title) ?? [];
  return {
    letter,
    scenario: scenario.id,
    request: requestSentence(evaluation, unmet, recommended),
    isPermittable: estimate !== undefined && unmet.length === 0,
    unmetGoals: unmet,
    ...(recommended !== undefined && { recommended }),
    table,
    total: summary?.total,
    contingency: summary?.contingency,
    budget: summary?.budget,
    ...(policy === 'confidence' && confidence !== undefined && { budgetCovers: Number(confidence) }),
    ...(risk !== undefined && { risk }),
    ...(againstPlan !== undefined && { againstPlan }),
    county: countyMoney(evaluation),
    sunkOn: sinkingDay(evaluation),
    lastDate: evaluation.project.calendars.deadline,
    finish: estimate?.schedule.finish,
    troubles: troubles(evaluation),
    afterSinking: afterTheSinking(evaluation),
    uncheckedShare: summary?.uncheckedShare,
    notStudied: notStudied(evaluation, risk !== undefined),
    otherChoices: otherChoices(evaluation, compared, recommended?.scenario),
    boardDates: boardDates(evaluation),
  };
}
