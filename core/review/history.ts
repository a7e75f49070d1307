import type { Cents } from '../cash-flow';
import { limitOf, type GrowthData, type ReviewData } from './data';
import type { ReviewInput } from './input';

/** A past hull beside the estimate: class, length and year only, one ship, in the money of the estimate. */
export interface LikeHull {
  readonly id: string;
  readonly hullClass: string;
  readonly lengthFeet?: number;
  readonly sunkYear: number;
  readonly today: Cents;
  readonly scope: string;
  readonly source: string;
}

/** What an estimate may come to and still agree with past hulls alike. */
export interface LikeBand {
  readonly low: Cents;
  readonly high: Cents;
  /** So wide that agreeing with it tells little. */
  readonly isWide: boolean;
}

/** The band in which an estimate agrees with past hulls alike; none without any. */
export function likeBand(like: readonly LikeHull[], data: ReviewData): LikeBand | undefined {
  if (like.length === 0) return undefined;
  const costs = like.map(hull => hull.today);
  const low = Math.round(Math.min(...costs) * limitOf(data, 'history-low'));
  const high = Math.round(Math.max(...costs) * limitOf(data, 'history-high'));
  return { low, high, isWide: high > low * limitOf(data, 'history-wide') };
}

/**
 * The past hulls alike: a length within the given share, the whole project in US dollars, at a price year the
 * index reaches. Where one is of the same class, only that class is taken.
 */
export function likeHulls(
  input: Pick<ReviewInput, 'hull' | 'priceFactors'>,
  growth: GrowthData,
  likeLength: number,
): LikeHull[] {
  const { lengthFeet, hullClass } = input.hull;
  if (lengthFeet === undefined) return [];
  const near = growth.history.flatMap(hull => {
    const factor = input.priceFactors[hull.priceYear];
    if (hull.lengthFeet === null || !hull.isWholeProject || hull.currency !== 'USD' || factor === undefined)
      return [];
    if (Math.abs(hull.lengthFeet - lengthFeet) > likeLength * lengthFeet) return [];
    const today = Math.round((Number(hull.total) * 100 * factor) / hull.ships);
    const { id, sunkYear, scope, source } = hull;
    return [{ id, hullClass: hull.hullClass, lengthFeet: hull.lengthFeet, sunkYear, today, scope, source }];
  });
  const same = near.filter(hull => hull.hullClass === hullClass);
  return same.length > 0 ? same : near;
}
