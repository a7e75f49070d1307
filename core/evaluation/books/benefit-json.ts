import type { BenefitFigures } from '../../benefit';
import type { Evaluation } from '../evaluate';
import type { JsonObject } from '../json';
import type { BenefitView } from './benefit-view';
import { amountsJson, inDollars } from './in-dollars';

/** Benefits, life and obligations as the command line prints them; what has no input is left out. */
export function benefitJson({ scenario, findings: evaluated }: Evaluation, view: BenefitView): JsonObject {
  const { case: made, obligations, alternatives = [], findings } = view;
  const ends = { low: made?.low, likely: made?.likely, high: made?.high };
  return {
    scenario: scenario.id,
    ...(made?.life && { life: made.life }),
    ...(made?.discountRate !== undefined && { discountRate: made.discountRate }),
    ...Object.fromEntries(
      Object.entries(ends).flatMap(([end, figures]) => (figures ? [[end, figuresJson(figures)]] : [])),
    ),
    obligations: (obligations?.beside ?? []).map(({ costPerYear, ...one }) => ({
      ...one,
      costPerYear: inDollars(costPerYear),
    })),
    onlyIfItHappens: (obligations?.contingent ?? []).map(({ amount, ...one }) => ({
      ...one,
      ...(amount !== undefined && { amount: inDollars(amount) }),
    })),
    alternatives: alternatives.map(({ published, today, low, high, ...one }) => ({
      ...one,
      ...(published !== undefined && { published: inDollars(published) }),
      ...(today !== undefined && { today: inDollars(today) }),
      ...(low !== undefined && { low: inDollars(low) }),
      ...(high !== undefined && { high: inDollars(high) }),
    })),
    findings: [...evaluated, ...findings.filter(one => !evaluated.includes(one))],
  };
}

function figuresJson(figures: BenefitFigures): JsonObject {
  const { years, annuity, benefitCostRatio, breakEvenVisits, ...amounts } = figures;
  return {
    years,
    annuity,
    ...amountsJson(amounts),
    ...(benefitCostRatio !== undefined && { benefitCostRatio }),
    ...(breakEvenVisits !== undefined && { breakEvenVisits }),
  };
}
