import type { BoundNet } from './bounds/bound-net';
import { boundNetOf, destructiveBound, energyBound } from './bounds/destructive';
import { windowsForEnd } from './bounds/windows-for-end';
import { plainNetOf } from './compile-plain';
import { OrderSearch } from './exact/order-search';
import { GeneticSearch, type Spending } from './genetic';
import { isFinished, resultOf, spendingFor, type Best } from './outcome';
import { reversedNet, type PlainNet } from './plain-net';
import { PlainSide } from './plain-side';
import type { SearchOptions, SearchProblem, SearchResult } from './problem';
import { tuningFor } from './tuning';

/** Largest plain networks that are searched exactly too: the started activities must fit one word. */
const EXACT_AT_MOST = 31;

/** Largest networks whose bound is raised by refuting ends: its time grows with the square of the size. */
const REFUTED_AT_MOST = 400;

/** Schedules a plain problem: bounds, genetic search and, when it is small, exact search. */
export function searchPlain(problem: SearchProblem, options: SearchOptions): SearchResult {
  const net = plainNetOf(problem);
  const bounds = boundNetOf(problem);
  const best: Best = {};
  const spending = spendingFor(options, energyBound(bounds), (made, isForward) => {
    const { starts, finishes, last } = made;
    best.starts = starts.map((start, i) => (isForward ? start : last - (finishes[i] ?? start)));
    best.finishes = best.starts.map((start, i) => start + (net.durations[i] ?? 0));
    return last;
  });
  const sides = [new PlainSide(net), new PlainSide(reversedNet(net))] as const;
  const search = new GeneticSearch(sides, tuningFor(net.count, options.schedules), spending, options.seed);
  search.begin();
  if (net.count <= REFUTED_AT_MOST) {
    spending.lowerBound = destructiveBound(bounds, spending.lowerBound, spending.best, spending.shouldStop);
  }
  if (options.isHeuristicOnly !== true && net.count <= EXACT_AT_MOST) {
    search.evolve(spending.limit * geneticShare(spending.limit));
    searchOrders(net, bounds, spending, best);
  }
  search.evolve(spending.limit);
  return resultOf(best, spending);
}

/**
 * Share of the budget before the exact search begins. Up to 5,000 schedules it proves little beyond the easy
 * networks, so it gets the last twentieth; at 50,000 it gets a fifth, then more.
 */
function geneticShare(limit: number): number {
  return Math.min(0.95, Math.max(0.5, 0.95 - 0.065 * Math.log(limit / 5000)));
}

/** The exact search, with what is left of the budget. */
function searchOrders(net: PlainNet, bounds: BoundNet, spending: Spending, best: Best): void {
  if (isFinished(spending)) return;
  const search = new OrderSearch(net, bounds, spending.best, {
    limit: spending.limit - spending.spent,
    shouldStop: spending.shouldStop,
    windowsFor: end => (end < spending.lowerBound ? null : windowsForEnd(bounds, end)),
    found: (finishes, last) => {
      best.finishes = finishes.slice();
      best.starts = finishes.map((finish, i) => finish - (net.durations[i] ?? 0));
      spending.best = last;
    },
  });
  const outcome = search.run();
  spending.spent += outcome.spent;
  if (outcome.isComplete) spending.lowerBound = spending.best;
}
