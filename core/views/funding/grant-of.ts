import { grantView, type Evaluation, type GrantView } from '../../evaluation';

const KNOWN = new WeakMap<Evaluation, GrantView>();

/** The grant budget of an evaluation, worked out once. */
export function grantOf(evaluation: Evaluation): GrantView {
  const known = KNOWN.get(evaluation) ?? grantView(evaluation);
  KNOWN.set(evaluation, known);
  return known;
}
