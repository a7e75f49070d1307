import type { Spending } from './genetic';
import type { Individual } from './individual';
import type { SearchConflict, SearchOptions, SearchResult } from './problem';

/** The best schedule so far, as starts and finishes in the problem's own moments. */
export interface Best {
  starts?: Int32Array;
  finishes?: Int32Array;
}

/** Share of the budget that the genetic search spends before an exact one begins. */
export const GENETIC_SHARE = 0.4;

/** @param take stores the schedule and says its value, Infinity when it is not a schedule to hand out. */
export function spendingFor(
  options: SearchOptions,
  lowerBound: number,
  take: (made: Individual, isForward: boolean) => number,
): Spending {
  const spending: Spending = {
    limit: options.schedules,
    spent: 0,
    best: Infinity,
    lowerBound,
    shouldStop: options.shouldStop ?? (() => false),
    keep: (made, isForward) => {
      const value = take(made, isForward);
      if (value >= spending.best) return;
      spending.best = value;
      options.onProgress?.({ schedules: spending.spent, finish: value, lowerBound: spending.lowerBound });
    },
  };
  return spending;
}

/** Whether there is nothing left to search for or to spend. */
export function isFinished(spending: Spending): boolean {
  return spending.best <= spending.lowerBound || spending.spent >= spending.limit || spending.shouldStop();
}

/** What the search hands back. */
export function resultOf(best: Best, spending: Spending): SearchResult {
  const { lowerBound, spent: schedules, best: finish } = spending;
  if (!best.starts || !best.finishes) {
    return { status: 'unknown', lowerBound, schedules, conflict: NO_ORDER };
  }
  const status = finish <= lowerBound ? 'optimal' : 'feasible';
  return { status, starts: best.starts, finishes: best.finishes, finish, lowerBound, schedules };
}

/** The conflict when resources and lags fit alone but not together. */
export const NO_ORDER: SearchConflict = {
  kind: 'no order of resources and lags',
  activities: [],
  relationships: [],
  resources: [],
};
