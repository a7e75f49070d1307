import { dayOf } from '../calendar';
import { benefitView, type Evaluation } from '../evaluation';
import { dollarsOf } from '../money';
import type { Criterion, DecisionChoices } from '../project';
import type { RiskFacts } from './risk-facts';
import { summaryOf } from './totals';

/** What each criterion asks, in words; less is better unless it says more. */
export const CRITERION_TITLES: Readonly<Record<Criterion, string>> = {
  cost: 'Low budget',
  finish: 'Early finish',
  confidence: 'Likely done before the grant ends, or by the last date',
  upright: 'Sinks upright by the screening',
  checked: 'Small share not yet checked',
  benefit: 'Benefit against cost',
};

/** What cost and finish are read from: the plan, or the trials once every scenario that is ranked was simulated. */
export type Reading = 'plan' | 'runs';

const READ_FROM: Readonly<Partial<Record<Criterion, Readonly<Record<Reading, string>>>>> = {
  cost: { plan: 'by the plan', runs: 'that 80 in 100 runs stay under' },
  finish: { plan: 'by the plan', runs: 'that 80 in 100 runs keep' },
};

/** A criterion with what it is read from: `Low budget by the plan`. */
export function criterionTitle(criterion: Criterion, reading: Reading): string {
  const from = READ_FROM[criterion]?.[reading];
  return from === undefined ? CRITERION_TITLES[criterion] : `${CRITERION_TITLES[criterion]} ${from}`;
}

/**
 * Weights until the board sets its own: cost and an upright sinking first (judgement, 2026). The chance of the grant period
 * or the deadline counts once every scenario was simulated; until then the others keep their proportions.
 */
export const USUAL_WEIGHTS: DecisionChoices['weights'] = [
  { criterion: 'cost', weight: '0.32' },
  { criterion: 'upright', weight: '0.24' },
  { criterion: 'confidence', weight: '0.2' },
  { criterion: 'finish', weight: '0.16' },
  { criterion: 'checked', weight: '0.08' },
];

/** What the criteria are read from, for some scenarios together: all by their runs, or all by their plans. */
export function readingOf(evaluations: readonly Evaluation[], risks: readonly RiskFacts[]): Reading {
  const isRun = ({ scenario }: Evaluation) => risks.some(risk => risk.scenario === scenario.id);
  return evaluations.length > 0 && evaluations.every(isRun) ? 'runs' : 'plan';
}

/** What a criterion reads of a scenario, more being better; nothing when the scenario has no figure for it. */
export function criterionValue(
  criterion: Criterion,
  evaluation: Evaluation,
  risks: readonly RiskFacts[],
  reading: Reading,
): number | undefined {
  const risk = risks.find(one => one.scenario === evaluation.scenario.id);
  return READ[criterion](evaluation, risk, reading === 'runs' ? risk : undefined);
}

type Read = (
  evaluation: Evaluation,
  risk: RiskFacts | undefined,
  /** The same facts, when cost and finish are read from them. */
  runs: RiskFacts | undefined,
) => number | undefined;

const READ: Readonly<Record<Criterion, Read>> = {
  cost: (one, _, runs) => negative(runs?.p80 ?? plannedDollars(one)),
  finish: ({ estimate }, _, runs) => negativeDay(runs?.finishP80 ?? estimate?.schedule.finish),
  confidence: (_, risk) => chanceInTime(risk),
  upright: ({ upright }) => (upright === undefined ? undefined : VERDICTS[upright.verdict]),
  checked: one => negative(summaryOf(one)?.uncheckedShare),
  benefit: one => benefitView(one).case?.likely?.benefitCostRatio,
};

/** The budget of the plan in dollars; without a contingency its total. */
function plannedDollars(evaluation: Evaluation): number | undefined {
  const summary = summaryOf(evaluation);
  const amount = summary?.budget ?? summary?.total;
  return amount && dollarsOf(amount);
}

/** The chance that the money is still there; without a grant that ends, of the deadline. */
function chanceInTime(risk: RiskFacts | undefined): number | undefined {
  return risk?.missesGrant === undefined ? risk?.chanceOfDeadline : 1 - risk.missesGrant;
}

/** How good a verdict of the upright screen is; one that cannot tell is as bad as one that warns. */
const VERDICTS: Readonly<Record<string, number>> = {
  'stays up': 2,
  leans: 1,
  'may roll over': 0,
  'cannot tell': 0,
  'does not sink': 0,
};

function negative(value: number | undefined): number | undefined {
  return value === undefined ? undefined : -value;
}

function negativeDay(iso: string | undefined): number | undefined {
  return iso === undefined || iso === '' ? undefined : -dayOf(iso);
}
