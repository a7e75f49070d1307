import { bidView, type BidView, type Evaluation } from '../../evaluation';

const KNOWN = new WeakMap<Evaluation, BidView>();

/** The bid of an evaluation, worked out once. */
export function bidOf(evaluation: Evaluation): BidView {
  const known = KNOWN.get(evaluation) ?? bidView(evaluation);
  KNOWN.set(evaluation, known);
  return known;
}

/** The name of a figure of the bid. */
export function bidId(...parts: readonly string[]): string {
  return `bid:${parts.join('|')}`;
}
