import review from '../../templates/review.json';
import { BASES, recordOf, type Basis } from '../base';
import type { Money } from '../money';
import { estimateClass, readReviewData, type EstimateClass, type ReviewData } from '../review';

let data: ReviewData | undefined;

/** The practices and classes as they are shipped. */
export function shippedReviewData(): ReviewData {
  data ??= readReviewData(review);
  return data;
}

/** The class of an estimate by how much of it is surveyed or quoted. */
export function classOf(byBasis: Readonly<Record<Basis, Money>>): EstimateClass | undefined {
  const cents = recordOf(BASES, basis => byBasis[basis].cents);
  return estimateClass(cents, shippedReviewData());
}
