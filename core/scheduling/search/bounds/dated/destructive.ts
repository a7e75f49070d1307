import { watchedResources } from '../../compile-held';
import type { DatedNet } from '../../dated-net';
import { LastingOrders } from '../../ordered';
import type { SearchProblem } from '../../problem';
import { suppliesOf, withinSupply, type Supply } from './energy';
import { incompatiblePairs, orderPairs } from './pairs';
import { besideCompulsory } from './timetable';
import { alongRelationships, openWindows, windowsOf, type DatedWindows } from './windows';

/** Rounds of the rules before an assumed end counts as not refuted. */
const ROUNDS = 40;

/** Refutes assumed ends of a problem with calendars, dates, lags, windows and varying capacities. */
export class DatedRefuter {
  private readonly windows: DatedWindows;
  private readonly pairs: Int32Array;
  private readonly supplies: readonly Supply[];
  private readonly base: number;

  constructor(problem: SearchProblem, nets: readonly [DatedNet, DatedNet]) {
    const orders = new LastingOrders(problem);
    this.windows = windowsOf(nets);
    this.base = nets[0].base;
    this.pairs = incompatiblePairs(nets[0], orders);
    this.supplies = suppliesOf(nets[0], watchedResources(problem, orders), problem.horizon);
  }

  /** Whether the rules find that nothing can end by a moment of the problem. */
  refutes(end: number): boolean {
    const { windows } = this;
    openWindows(windows, this.base + end);
    for (let round = 0; round < ROUNDS; round++) {
      const before = windows.moves;
      if (!this.holds(before)) return true;
      if (windows.moves === before) return false;
    }
    return false;
  }

  private holds(before: number): boolean {
    const { windows, pairs, supplies } = this;
    const holds =
      alongRelationships(windows, 0) &&
      alongRelationships(windows, 1) &&
      orderPairs(windows, pairs) &&
      besideCompulsory(windows, 0) &&
      besideCompulsory(windows, 1);
    if (!holds || windows.moves !== before) return holds;
    return withinSupply(windows, 0, supplies) && withinSupply(windows, 1, supplies);
  }
}

/**
 * Raises a lower bound by refuting ends, halving the gap to the best finish known.
 * @param bound a valid lower bound to start from. @param best a finish that is known to be possible.
 * @source Klein and Scholl, European Journal of Operational Research 112 (1999) 322-346 (destructive improvement).
 */
export function raisedBound(
  refuter: DatedRefuter,
  bound: number,
  best: number,
  shouldStop: () => boolean,
): number {
  let proved = bound;
  let open = best;
  for (let end = best - 1; proved < open && !shouldStop(); end = (proved + open - 1) >> 1) {
    if (refuter.refutes(end)) proved = end + 1;
    else open = end;
  }
  return proved;
}
