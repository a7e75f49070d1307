import { intAt } from '../../base';
import type { BoundNet } from './bounds/bound-net';
import { boundNetOf, destructiveBound, energyBound } from './bounds/destructive';
import { windowsForEnd } from './bounds/windows-for-end';
import { plainNetOf } from './compile-plain';
import { GeneticSearch, type Spending } from './genetic';
import { cutsIn } from './learning/cuts';
import { LearningSearch } from './learning/learning-search';
import { isFinished, resultOf, spendingFor, type Best } from './outcome';
import { reversedNet, type PlainNet } from './plain-net';
import { PlainSide } from './plain-side';
import type { SearchOptions, SearchProblem, SearchResult } from './problem';
import { tuningFor } from './tuning';

/** Largest networks whose bound is raised by refuting ends: its time grows with the square of the size. */
const REFUTED_AT_MOST = 400;

/** Cuts an exact search may number: about 70 bytes each. */
const MOST_CUTS = 1_000_000;

/** Schedules a plain problem: bounds, genetic search, and exact search with the rest of the budget. */
export function searchPlain(problem: SearchProblem, options: SearchOptions): SearchResult {
  const net = plainNetOf(problem);
  const bounds = boundNetOf(problem);
  const best: Best = {};
  const spending = spendingFor(options, energyBound(bounds), (made, isForward) => {
    const { starts, finishes, last } = made;
    best.starts = starts.map((start, i) => (isForward ? start : last - intAt(finishes, i)));
    best.finishes = best.starts.map((start, i) => start + intAt(net.durations, i));
    return last;
  });
  const sides = [new PlainSide(net), new PlainSide(reversedNet(net))] as const;
  const search = new GeneticSearch(sides, tuningFor(net.count, options.schedules), spending, options.seed);
  search.begin();
  if (net.count <= REFUTED_AT_MOST) {
    spending.lowerBound = destructiveBound(bounds, spending.lowerBound, spending.best, spending.shouldStop);
  }
  if (options.isHeuristicOnly !== true) {
    search.evolve(spending.limit * geneticShare(net.count));
    searchExactly(net, bounds, spending, best);
  }
  search.evolve(spending.limit);
  return resultOf(best, spending);
}

/**
 * Share of the budget before the exact search begins. Found by trials on parts of public instance sets: what the exact
 * search proves and finds in the rest is worth more than the last schedules of a population, the more the smaller the
 * network.
 */
function geneticShare(count: number): number {
  return Math.min(0.85, 0.6 + count / 240);
}

/** The exact search, with what is left of the budget. */
function searchExactly(net: PlainNet, bounds: BoundNet, spending: Spending, best: Best): void {
  if (isFinished(spending) || !best.starts) return;
  const windowsFor = (end: number) => (end < spending.lowerBound ? null : windowsForEnd(bounds, end));
  const windows = windowsFor(spending.best - 1);
  if (!windows) {
    spending.lowerBound = spending.best;
    return;
  }
  const left = spending.limit - spending.spent;
  // To number the cuts must not take longer than what is left to spend.
  if (cutsIn(windows, net.durations) > Math.min(left * net.count, MOST_CUTS)) return;
  const search = new LearningSearch(net, bounds, windows, best.starts, {
    limit: left,
    shouldStop: spending.shouldStop,
    windowsFor,
    found: (starts, last) => {
      best.starts = starts.slice();
      best.finishes = starts.map((start, i) => start + intAt(net.durations, i));
      spending.best = last;
    },
  });
  const outcome = search.run();
  spending.spent += outcome.spent;
  if (outcome.isComplete) spending.lowerBound = spending.best;
}
