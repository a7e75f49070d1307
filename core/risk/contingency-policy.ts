import type { Finding } from '../base';
import { dollarsOf, roundToCents } from '../money';
import { contingencyAt, type Contingency } from './contingency';
import type { PreparedRun } from './prepared';
import type { SimulationResult } from './result';

/** How contingency is set: a percentage of the plan by estimate class, or a confidence from the simulation. */
export type ContingencyPolicy =
  | { readonly kind: 'percentage'; readonly estimateClass: 1 | 2 | 3 | 4 | 5; readonly share: number }
  | { readonly kind: 'confidence'; readonly confidence: number };

/** What the document may hold: at most one of the two may be given. */
export interface PolicyChoice {
  readonly percentage?: { readonly estimateClass: 1 | 2 | 3 | 4 | 5; readonly share: number };
  readonly confidence?: number;
}

/** What a grant allows as contingency, to stand beside every contingency. @source 2 CFR 200.433. */
export const GRANT_CONTINGENCY_NOTE =
  'A federal grant allows contingency that is estimated by a broadly accepted method, documented, and accepted by ' +
  'the agency (2 CFR 200.433). It leaves out major changes of scope, unforeseen risks and extraordinary events; ' +
  'money set aside for unforeseeable events is not allowable.';

/** Reads the choice of the document; both at once is a finding, and none is a finding. */
export function policyOf(choice: PolicyChoice, place: string): ContingencyPolicy | Finding {
  const { percentage, confidence } = choice;
  if (percentage !== undefined && confidence !== undefined) {
    return {
      code: 'risk/two-contingencies',
      weight: 'blocks',
      place,
      message: 'Contingency is given both as a percentage and as a confidence.',
      meaning: 'Adding both would count the same risk twice.',
      remedy: 'Keep one: a percentage by estimate class, or a confidence from the simulation.',
    };
  }
  if (percentage !== undefined) return { kind: 'percentage', ...percentage };
  if (confidence !== undefined) return { kind: 'confidence', confidence };
  return {
    code: 'risk/no-contingency-policy',
    weight: 'warns',
    place,
    message: 'No contingency is chosen.',
    meaning: 'The budget is absent; the total without contingency stands.',
    remedy: 'Choose a percentage by estimate class or a confidence from the simulation.',
  };
}

/**
 * The contingency by the policy. A percentage has no split by risk: it goes to the lines in proportion to
 * their plan figures elsewhere, so its lines are empty here.
 */
export function contingencyBy(
  policy: ContingencyPolicy,
  prepared: PreparedRun,
  result: SimulationResult,
): Contingency {
  if (policy.kind === 'confidence') return contingencyAt(prepared, result, policy.confidence);
  const amount = dollarsOf(roundToCents(prepared.plan.total * policy.share));
  const budget = dollarsOf(roundToCents(prepared.plan.total + amount));
  const within = result.samples.total.filter(x => x <= budget).length;
  return { confidence: within / (result.trials - result.withoutAnswer), budget, amount, lines: [] };
}
