import type { JsonObject } from '../json';
import type { HistoryView } from './history-view';
import { amountsJson, inDollars } from './in-dollars';

/** The history view as the command line prints it. */
export function historyJson({ total, contingency, growth, cases, likeHulls, band }: HistoryView): JsonObject {
  return {
    ...(total !== undefined && { total: inDollars(total) }),
    ...(contingency !== undefined && { contingency: inDollars(contingency) }),
    ...(growth && {
      growth: {
        factor: growth.factor,
        least: growth.least,
        median: growth.median,
        most: growth.most,
        belowMedian: growth.isBelowMedian,
        ...amountsJson({ atLeast: growth.atLeast, atMedian: growth.atMedian, atMost: growth.atMost }),
      },
    }),
    cases: cases.map(({ cost, ...one }) => ({ ...one, cost: inDollars(cost) })),
    likeHulls: likeHulls.map(({ today, ...hull }) => ({ ...hull, today: inDollars(today) })),
    ...(band && { band: amountsJson({ low: band.low, high: band.high }) }),
  };
}
