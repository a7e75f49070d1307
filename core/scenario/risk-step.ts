import { fromCents, minus, type Money } from '../money';
import type { Evaluation } from '../evaluation';
import type { RiskFacts } from './risk-facts';
import { summaryOf } from './totals';

/**
 * What risk adds to the difference of two totals. Totals hold no risk, so this step leads on from their difference to
 * that of the budgets; where no budget can be told, to that of what 80 of 100 simulated runs cost at most.
 */
export interface RiskStep {
  readonly kind: 'contingency' | 'simulation';
  readonly title: string;
  /** What it adds; negative when the second scenario is the surer one. */
  readonly amount: Money;
  /** Where it leads: the difference with the risk in it. */
  readonly end: { readonly title: string; readonly amount: Money };
}

/**
 * The step of risk from one scenario to another: the difference of the contingencies; without those the difference of
 * what 80 of 100 runs of one simulation add beyond the totals. Swapping the two turns the sign.
 * @returns nothing when neither is known for both.
 */
export function riskStep(
  a: Evaluation,
  b: Evaluation,
  risks: readonly RiskFacts[] = [],
): RiskStep | undefined {
  return contingencyStep(a, b) ?? simulatedStep(a, b, risks);
}

function contingencyStep(a: Evaluation, b: Evaluation): RiskStep | undefined {
  const [first, second] = [summaryOf(a), summaryOf(b)];
  if (!first?.contingency || !second?.contingency || !first.budget || !second.budget) return undefined;
  return {
    kind: 'contingency',
    title: CONTINGENCY[b.project.contingency.policy],
    amount: minus(second.contingency, first.contingency),
    end: { title: 'Difference of the budgets', amount: minus(second.budget, first.budget) },
  };
}

const CONTINGENCY: Readonly<Record<Evaluation['project']['contingency']['policy'], string>> = {
  percentage: 'Risk: the contingency, a percentage of each total',
  confidence: 'Risk: the contingency that the simulation asks for',
};

function simulatedStep(a: Evaluation, b: Evaluation, risks: readonly RiskFacts[]): RiskStep | undefined {
  const [first, second] = [a, b].map(one => beyondTotal(one, risks));
  if (first === undefined || second === undefined) return undefined;
  return {
    kind: 'simulation',
    title: 'Risk: what 80 of 100 simulated runs add beyond each total',
    amount: minus(second.beyond, first.beyond),
    end: {
      title: 'Difference of what 80 of 100 runs cost at most',
      amount: minus(second.atMost, first.atMost),
    },
  };
}

function beyondTotal(
  evaluation: Evaluation,
  risks: readonly RiskFacts[],
): { readonly beyond: Money; readonly atMost: Money } | undefined {
  const total = summaryOf(evaluation)?.total;
  const risk = risks.find(({ scenario }) => scenario === evaluation.scenario.id);
  if (total === undefined || risk === undefined) return undefined;
  const atMost = fromCents(Math.round(risk.p80 * 100));
  return { beyond: minus(atMost, total), atMost };
}
