import { boundNetOf, type BoundNet } from './bounds/bound-net';
import { DatedRefuter, raisedBound } from './bounds/dated/destructive';
import { datedNetsOf } from './compile-dated';
import type { DatedNet } from './dated-net';
import { DatedSide, type Anchor } from './dated-side';
import { DelaySearch } from './exact/delay-search';
import { GeneticSearch, type Spending } from './genetic';
import { GENETIC_SHARE, isFinished, NO_ORDER, resultOf, spendingFor, type Best } from './outcome';
import type { Lag } from './lags';
import { conflictOfDates } from './preflight';
import type { SearchOptions, SearchProblem, SearchResult } from './problem';
import { earliestTimes } from './propagate';
import { tuningFor } from './tuning';

/** Largest dated networks that are searched exactly too. */
const EXACT_AT_MOST = 40;

/** Largest dated networks whose bound is raised by refuting ends: its time grows with the square of the size. */
const REFUTED_AT_MOST = 500;

/**
 * Shares of the budget after which the best schedule so far is tried to be proved optimal, if it is a new one. A proof
 * costs as much as a hundred passes or more: small budgets are not spent on one.
 */
const SHARES_BEFORE_SHAVING = [0.06, 0.15, 0.4, 1];
const SMALL_BUDGET = 500;

/** Only a schedule near the bound is tried: so many days and this share of the bound above it. Others take too long. */
const NEAR_DAYS = 3;
const NEAR = 0.03;

/** Pairs tried in a proof: at least so many, and more with a large budget. */
const FEWEST_PAIRS = 150;
const PAIRS = 100;
const PAIRS_A_SCHEDULE = 0.01;

/** Schedules a problem with calendars, dates, lags, windows or varying capacities. */
export function searchDated(
  problem: SearchProblem,
  lags: readonly Lag[],
  options: SearchOptions,
): SearchResult {
  const nets = datedNetsOf(problem, lags);
  const [forward, backward] = nets;
  const earliest = earliestTimes(forward, forward.base, forward.due);
  const conflict = conflictOfDates(problem, forward, earliest);
  if (conflict) return { status: 'infeasible', lowerBound: 0, schedules: 0, conflict };
  const best: Best = {};
  const anchor: Anchor = { moment: forward.base + problem.horizon, late: Infinity };
  const spending = spendingFor(options, lastOf(earliest.finishes) - forward.base, (made, isForward) => {
    if (!isForward) return Infinity;
    best.starts = made.starts.map(start => start - forward.base);
    best.finishes = made.finishes.map(finish => finish - forward.base);
    return made.last - forward.base;
  });
  const sides = [new DatedSide(forward, true, anchor), new DatedSide(backward, false, anchor)] as const;
  const search = new GeneticSearch(
    sides,
    // With calendars the shorter schedule is kept at any size, as in small plain networks; no open set tells which is better.
    { ...tuningFor(forward.count, options.schedules), keepsShorter: true },
    spending,
    options.seed,
  );
  search.begin();
  const bound = new RisingBound(problem, nets, spending, search);
  bound.raise();
  if (options.isHeuristicOnly !== true && forward.count <= EXACT_AT_MOST) {
    search.evolve(spending.limit * GENETIC_SHARE);
    const isImpossible = searchDelays(problem, nets, spending, best);
    if (isImpossible) {
      return { status: 'infeasible', lowerBound: 0, schedules: spending.spent, conflict: NO_ORDER };
    }
  }
  if (spending.limit < SMALL_BUDGET) search.evolve(spending.limit);
  else {
    for (const share of SHARES_BEFORE_SHAVING) {
      search.evolve(spending.limit * share);
      bound.shave(share === 1);
    }
  }
  return resultOf(best, spending);
}

function lastOf(moments: Int32Array): number {
  return moments.reduce((last, moment) => Math.max(last, moment), 0);
}

/** The lower bound of a search: refutes ends below the best schedule found. */
class RisingBound {
  private readonly refuter: DatedRefuter | null;
  private readonly spending: Spending;
  private readonly search: GeneticSearch;
  private shaved = Infinity;

  constructor(
    problem: SearchProblem,
    nets: readonly [DatedNet, DatedNet],
    spending: Spending,
    search: GeneticSearch,
  ) {
    this.spending = spending;
    this.search = search;
    const isOver = nets[0].count > REFUTED_AT_MOST || isFinished(spending) || spending.best === Infinity;
    this.refuter = isOver ? null : new DatedRefuter(nets, problem.horizon);
  }

  raise(): void {
    const { spending, refuter } = this;
    if (!refuter || isFinished(spending)) return;
    spending.lowerBound = raisedBound(refuter, spending.lowerBound, spending.best, spending.shouldStop);
  }

  /**
   * Tries to prove the best schedule optimal, once for each. Where the proof fails, the times it leaves guide a schedule
   * that may end a day earlier, and that one is tried.
   * @param doesHalve whether the bound is raised as far as the proofs reach when that one fails.
   */
  shave(doesHalve: boolean): void {
    const { spending, refuter, search } = this;
    const { best, shouldStop } = spending;
    const isNear = best - spending.lowerBound <= NEAR_DAYS + NEAR * spending.lowerBound;
    if (!refuter || !isNear || (best >= this.shaved && !doesHalve)) return;
    const pairsTried = Math.max(FEWEST_PAIRS, PAIRS + spending.limit * PAIRS_A_SCHEDULE);
    let open = best >= this.shaved ? best - 1 : best;
    while (spending.lowerBound < open && !shouldStop()) {
      const isLast = open === spending.best;
      if (isLast) this.shaved = open;
      const end = isLast ? open - 1 : (spending.lowerBound + open - 1) >> 1;
      if (refuter.refutesByShaving(end, pairsTried, shouldStop)) {
        spending.lowerBound = end + 1;
        continue;
      }
      if (!isFinished(spending)) search.follow(refuter.latest());
      if (spending.best > end && !doesHalve) return;
      open = Math.min(end, spending.best);
    }
  }
}

/** The exact search, with what is left of the budget; true when it proves that there is no schedule. */
function searchDelays(
  problem: SearchProblem,
  nets: readonly [DatedNet, DatedNet],
  spending: Spending,
  best: Best,
): boolean {
  if (isFinished(spending)) return false;
  const { base, slots } = nets[0];
  const search = new DelaySearch(nets, {
    limit: spending.limit - spending.spent,
    below: spending.best === Infinity ? slots : base + spending.best,
    shouldStop: spending.shouldStop,
    bounds: timelessBounds(problem),
    found: ({ starts, finishes }, last) => {
      best.starts = starts.map(start => start - base);
      best.finishes = finishes.map(finish => finish - base);
      spending.best = last - base;
    },
  });
  const outcome = search.run();
  spending.spent += outcome.spent;
  if (!outcome.isComplete) return false;
  spending.lowerBound = Math.min(spending.best, slots);
  return spending.best === Infinity;
}

/** Demands and durations for the rules on constant capacities; null with calendars or varying capacities. */
function timelessBounds(problem: SearchProblem): BoundNet | null {
  const isTimeless =
    problem.resources.every(resource => resource.capacityByDay === undefined) &&
    problem.activities.every(
      ({ calendar, fixedStart }) => calendar === undefined && fixedStart === undefined,
    );
  return isTimeless ? boundNetOf({ ...problem, relationships: [] }) : null;
}
