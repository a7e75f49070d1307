import type { Evaluation, BenefitView } from '../../evaluation';
import { benefitView } from '../../evaluation';

/** The name of a figure of the benefit case: which end of it, and which figure. */
export function benefitId(...parts: readonly string[]): string {
  return `benefit:${parts.join('|')}`;
}

const KNOWN = new WeakMap<Evaluation, BenefitView>();

/** The benefit case of an evaluation, worked out once. */
export function benefitOf(evaluation: Evaluation): BenefitView {
  const known = KNOWN.get(evaluation) ?? benefitView(evaluation);
  KNOWN.set(evaluation, known);
  return known;
}
