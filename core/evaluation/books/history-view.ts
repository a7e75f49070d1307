import type { Finding } from '../../base';
import type { Cents } from '../../cash-flow';
import {
  growthView,
  likeBand,
  likeHulls,
  limitOf,
  type GrowthView,
  type LikeBand,
  type LikeHull,
} from '../../review';
import { shippedReviewData } from '../estimate-class';
import type { Evaluation } from '../evaluate';
import { bookBasis } from './book-lines';
import { reviewHull } from './review-input';
import { priceFactors } from './price-factors';
import { shippedBookRules, type BookRules } from './shipped-rules';

/** A recorded case of growth, and what this estimate would come to if it grew alike. */
export interface GrowthCase {
  readonly hullClass: string;
  readonly lengthFeet?: number;
  readonly factor: number;
  readonly cost: Cents;
  readonly what: string;
  readonly source: string;
}

/** What past hulls say of this estimate: how much they grew, and what those alike have cost. */
export interface HistoryView {
  readonly total?: Cents;
  readonly contingency?: Cents;
  /** The contingency beside the recorded growth; absent with the contingency. */
  readonly growth?: GrowthView;
  /** The recorded cases, the least first. */
  readonly cases: readonly GrowthCase[];
  /** Past hulls of like class and length, one ship each, in the money of the estimate. */
  readonly likeHulls: readonly LikeHull[];
  /** The band in which an estimate agrees with them; absent without any. */
  readonly band?: LikeBand;
  readonly findings: readonly Finding[];
}

/** The history view: the estimate beside the recorded growth and cost of past hulls, by class, length and year only. */
export function historyView(evaluation: Evaluation, rules: BookRules = shippedBookRules()): HistoryView {
  const { basis, findings } = bookBasis(evaluation);
  const total = basis?.summary.total?.cents;
  if (basis === undefined || total === undefined) return { cases: [], likeHulls: [], findings };
  const data = shippedReviewData();
  const contingency = basis.summary.contingency?.cents;
  const like = likeHulls(
    { hull: reviewHull(basis, rules.growth), priceFactors: priceFactors(basis) },
    rules.growth,
    limitOf(data, 'like-length'),
  );
  const band = likeBand(like, data);
  return {
    total,
    ...(contingency !== undefined && {
      contingency,
      growth: growthView(total, contingency, rules.growth),
    }),
    cases: casesOf(total, rules),
    likeHulls: like,
    ...(band !== undefined && { band }),
    findings,
  };
}

function casesOf(total: Cents, { growth }: BookRules): GrowthCase[] {
  return growth.growth
    .map(({ hullClass, lengthFeet, factor, what, source }) => ({
      hullClass,
      ...(lengthFeet !== null && { lengthFeet }),
      factor: Number(factor),
      cost: Math.round(total * Number(factor)),
      what,
      source,
    }))
    .toSorted((a, b) => a.factor - b.factor);
}
