import { boundNetOf, destructiveBound, energyBound } from './bounds/destructive';
import { isPlain, plainNetOf } from './compile-plain';
import { datedNetsOf } from './compile-dated';
import { earliestFinish } from './dated-bound';
import { DatedSide, type Anchor } from './dated-side';
import { GeneticSearch, type Spending } from './genetic';
import type { Individual } from './individual';
import { reversedNet, type PlainNet } from './plain-net';
import { PlainSide } from './plain-side';
import { conflictOfDates, conflictOnSight } from './preflight';
import type { SearchOptions, SearchProblem, SearchResult } from './problem';
import { tuningFor } from './tuning';

/**
 * Schedules a problem for the earliest finish. Deterministic for a seed and a number of schedules.
 * @returns the best schedule found, what is proved about it, or what stands in the way of any.
 */
export function searchSchedule(problem: SearchProblem, options: SearchOptions): SearchResult {
  const conflict = conflictOnSight(problem);
  if (conflict) return { status: 'infeasible', lowerBound: 0, schedules: 0, conflict };
  if (problem.activities.length === 0) return nothingToDo();
  return isPlain(problem) ? searchPlain(problem, options) : searchDated(problem, options);
}

function nothingToDo(): SearchResult {
  const none = new Int32Array(0);
  return { status: 'optimal', starts: none, finishes: none, finish: 0, lowerBound: 0, schedules: 0 };
}

/** The best schedule so far, as starts and finishes in the problem's own moments. */
interface Best {
  starts?: Int32Array;
  finishes?: Int32Array;
}

function searchPlain(problem: SearchProblem, options: SearchOptions): SearchResult {
  const net = plainNetOf(problem);
  const bounds = boundNetOf(problem);
  const best: Best = {};
  const spending = spendingFor(options, energyBound(bounds), (made, isForward) => {
    best.starts = made.starts.map((start, i) =>
      isForward ? start : made.last - (made.finishes[i] ?? start),
    );
    best.finishes = best.starts.map((start, i) => start + (net.durations[i] ?? 0));
    return made.last;
  });
  const search = new GeneticSearch(
    sidesOf(net),
    tuningFor(net.count, options.schedules),
    spending,
    options.seed,
  );
  search.begin();
  spending.lowerBound = destructiveBound(bounds, spending.lowerBound, spending.best, spending.shouldStop);
  search.evolve();
  return resultOf(best, spending);
}

function sidesOf(net: PlainNet): [PlainSide, PlainSide] {
  return [new PlainSide(net), new PlainSide(reversedNet(net))];
}

function searchDated(problem: SearchProblem, options: SearchOptions): SearchResult {
  const nets = datedNetsOf(problem);
  const [forward, backward] = nets;
  const conflict = conflictOfDates(problem, forward);
  if (conflict) return { status: 'infeasible', lowerBound: 0, schedules: 0, conflict };
  const best: Best = {};
  const anchor: Anchor = { moment: forward.base + problem.horizon, late: Infinity };
  const lowerBound = earliestFinish(nets) - forward.base;
  const spending = spendingFor(options, lowerBound, (made, isForward) => {
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
  search.evolve();
  return resultOf(best, spending);
}

/** @param take stores the schedule and says its value, Infinity when it is not a schedule to hand out. */
function spendingFor(
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

function resultOf(best: Best, spending: Spending): SearchResult {
  const { lowerBound, spent: schedules } = spending;
  if (!best.starts || !best.finishes) {
    const conflict = {
      kind: 'no order of resources and lags',
      activities: [],
      relationships: [],
      resources: [],
    } as const;
    return { status: 'unknown', lowerBound, schedules, conflict };
  }
  const finish = spending.best;
  const status = finish <= lowerBound ? 'optimal' : 'feasible';
  return { status, starts: best.starts, finishes: best.finishes, finish, lowerBound, schedules };
}
