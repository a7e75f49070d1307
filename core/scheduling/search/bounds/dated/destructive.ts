import { intAt } from '../../../../base';
import type { DatedNet } from '../../dated-net';
import { suppliesOf, withinSupply, type Supply } from './energy';
import type { Times } from '../../dated-pass';
import type { Links } from '../../plain-net';
import { incompatiblePairs, isOpenPair, orderPairs, putBefore, rivalsOf } from './pairs';
import { besideCompulsory, bringInLine } from './timetable';
import { alongRelationships, Bookmark, openWindows, windowsOf, type DatedWindows } from './windows';

/** Rounds of the rules before an assumed end counts as not refuted. */
const ROUNDS = 40;
/** Times all pairs are tried. */
const SHAVING_ROUNDS = 4;

/** Refutes assumed ends of a problem with calendars, dates, lags, windows and varying capacities. */
export class DatedRefuter {
  private readonly windows: DatedWindows;
  private readonly pairs: Int32Array;
  private readonly rivals: Links;
  private readonly supplies: readonly Supply[];
  private readonly base: number;

  /** @param horizon days of the problem. */
  constructor(nets: readonly [DatedNet, DatedNet], horizon: number) {
    this.windows = windowsOf(nets);
    this.base = nets[0].base;
    this.pairs = incompatiblePairs(nets[0]);
    this.rivals = rivalsOf(nets[0].count, this.pairs);
    this.supplies = suppliesOf(nets[0], horizon);
  }

  /** Whether the rules find that nothing can end by a moment of the problem. */
  refutes(end: number): boolean {
    openWindows(this.windows, this.base + end);
    return !this.settles(true);
  }

  /**
   * The same with shaving: of each pair that cannot run at once, the order that the rules refute is excluded.
   * @source Carlier and Pinson, European Journal of Operational Research 78 (1994) 146-161 (shaving); Martin and
   *   Shmoys, Lecture Notes in Computer Science 1084 (1996) 389-403.
   * @param pairsTried how many it may try at most.
   */
  refutesByShaving(end: number, pairsTried: number, shouldStop: () => boolean): boolean {
    if (this.refutes(end)) return true;
    const { windows, pairs } = this;
    let left = pairsTried;
    const mark = new Bookmark(windows);
    for (let round = 0; round < SHAVING_ROUNDS; round++) {
      const before = windows.moves;
      let hasLearnt = false;
      for (let p = 0; p < pairs.length && !shouldStop(); p += 2) {
        const pair = [intAt(pairs, p), intAt(pairs, p + 1)] as const;
        if (!isOpenPair(windows, ...pair)) continue;
        if (left-- <= 0) return false;
        const outcome = this.shave(mark, pair);
        if (outcome === 'refuted') return true;
        hasLearnt ||= outcome === 'learnt';
      }
      if (!hasLearnt || windows.moves === before) return false;
    }
    return false;
  }

  /** The latest times that the last assumed end leaves, counted from the end: a guide to schedules that keep it. */
  latest(): Times {
    return this.windows.views[1].times;
  }

  private shave(mark: Bookmark, [i, j]: readonly [number, number]): 'refuted' | 'learnt' | 'open' {
    const canFirst = this.tries(mark, i, j);
    const canSecond = this.tries(mark, j, i);
    if (canFirst && canSecond) return 'open';
    const holds = canFirst ? this.orders(i, j) : canSecond && this.orders(j, i);
    if (!holds) return 'refuted';
    mark.renew();
    return 'learnt';
  }

  /** Whether the rules leave room for an order; the windows stay as they were. */
  private tries(mark: Bookmark, first: number, second: number): boolean {
    const holds = this.orders(first, second);
    mark.comeBack();
    bringInLine(this.windows);
    return holds;
  }

  private orders(first: number, second: number): boolean {
    return putBefore(this.windows, first, second) && this.settles(false);
  }

  /** Applies the rules until nothing moves; false when they find a contradiction. */
  private settles(doesEnergy: boolean): boolean {
    const { windows, supplies } = this;
    for (let round = 0; round < ROUNDS; round++) {
      const before = windows.moves;
      if (!this.holds()) return false;
      if (windows.moves !== before) continue;
      if (doesEnergy && !(withinSupply(windows, 0, supplies) && withinSupply(windows, 1, supplies))) {
        return false;
      }
      if (windows.moves === before) return true;
    }
    return true;
  }

  private holds(): boolean {
    const { windows, rivals } = this;
    return (
      alongRelationships(windows, 0) &&
      alongRelationships(windows, 1) &&
      orderPairs(windows, rivals) &&
      besideCompulsory(windows, 0) &&
      besideCompulsory(windows, 1)
    );
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
