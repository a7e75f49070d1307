import { boundNetOf, type BoundNet } from './bounds/bound-net';
import { DatedRefuter, raisedBound } from './bounds/dated/destructive';
import { datedNetsOf } from './compile-dated';
import { datedBound } from './dated-bound';
import type { DatedNet } from './dated-net';
import { DatedSide, type Anchor } from './dated-side';
import { DelaySearch } from './exact/delay-search';
import { GeneticSearch, type Spending } from './genetic';
import { GENETIC_SHARE, isFinished, NO_ORDER, resultOf, spendingFor, type Best } from './outcome';
import { conflictOfDates } from './preflight';
import type { SearchOptions, SearchProblem, SearchResult } from './problem';
import { tuningFor } from './tuning';

/** Largest dated networks that are searched exactly too. */
const EXACT_AT_MOST = 40;

/** Largest dated networks whose bound is raised by refuting ends: its time grows with the square of the size. */
const REFUTED_AT_MOST = 500;

/** Schedules a problem with calendars, dates, lags, windows or varying capacities. */
export function searchDated(problem: SearchProblem, options: SearchOptions): SearchResult {
  const nets = datedNetsOf(problem);
  const [forward, backward] = nets;
  const conflict = conflictOfDates(problem, forward);
  if (conflict) return { status: 'infeasible', lowerBound: 0, schedules: 0, conflict };
  const best: Best = {};
  const anchor: Anchor = { moment: forward.base + problem.horizon, late: Infinity };
  const spending = spendingFor(options, datedBound(forward) - forward.base, (made, isForward) => {
    if (!isForward) return Infinity;
    best.starts = made.starts.map(start => start - forward.base);
    best.finishes = made.finishes.map(finish => finish - forward.base);
    return made.last - forward.base;
  });
  const sides = [new DatedSide(forward, true, anchor), new DatedSide(backward, false, anchor)] as const;
  const search = new GeneticSearch(
    sides,
    tuningFor(forward.count, options.schedules),
    spending,
    options.seed,
  );
  search.begin();
  raiseBound(problem, nets, spending);
  if (options.isHeuristicOnly !== true && forward.count <= EXACT_AT_MOST) {
    search.evolve(spending.limit * GENETIC_SHARE);
    const isImpossible = searchDelays(problem, nets, spending, best);
    if (isImpossible) {
      return { status: 'infeasible', lowerBound: 0, schedules: spending.spent, conflict: NO_ORDER };
    }
  }
  search.evolve(spending.limit);
  return resultOf(best, spending);
}

/** Refutes ends below the best schedule found. */
function raiseBound(problem: SearchProblem, nets: readonly [DatedNet, DatedNet], spending: Spending): void {
  if (nets[0].count > REFUTED_AT_MOST || isFinished(spending)) return;
  if (spending.best === Infinity) return;
  const refuter = new DatedRefuter(problem, nets);
  spending.lowerBound = raisedBound(refuter, spending.lowerBound, spending.best, spending.shouldStop);
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
