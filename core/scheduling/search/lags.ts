import { intAt } from '../../base';
import { FROM_FINISH, TO_FINISH, type Arcs, type DatedNet } from './dated-net';
import { linksOf } from './plain-net';
import type { RelationshipKind, SearchProblem } from './problem';
import { orderOf } from './tails';

/** One minimum or maximum lag between two activities. */
export interface Lag {
  readonly from: number;
  readonly to: number;
  readonly kind: RelationshipKind;
  readonly days: number;
  readonly isMaximum: boolean;
  readonly calendar: number;
  /** Position of the relationship it comes from. */
  readonly relationship: number;
}

const ENDS: Readonly<Record<RelationshipKind, number>> = {
  FS: FROM_FINISH,
  SS: 0,
  FF: FROM_FINISH + TO_FINISH,
  SF: TO_FINISH,
};
/** What the kind becomes when from and to change places. */
const TURNED: Readonly<Record<RelationshipKind, RelationshipKind>> = {
  FS: 'SF',
  SS: 'SS',
  FF: 'FF',
  SF: 'FS',
};
/** What the kind becomes when time runs backwards: from and to change places, and starts become finishes. */
const MIRRORED: Readonly<Record<RelationshipKind, RelationshipKind>> = {
  FS: 'FS',
  SS: 'FF',
  FF: 'SS',
  SF: 'SF',
};

/**
 * The lags of a problem, such that the minimum lags form no loop where that can be had: a negative minimum lag
 * inside a loop is said the other way round, as a maximum lag of the reverse. Relationships between two fixed
 * activities say nothing any more and are left out.
 */
export function normalised(problem: SearchProblem): Lag[] {
  const { activities, relationships } = problem;
  const lags: Lag[] = [];
  relationships.forEach((link, relationship) => {
    const { from, to, kind, minimumLag, maximumLag, calendar = -1 } = link;
    const isPast = activities[from]?.fixedStart !== undefined && activities[to]?.fixedStart !== undefined;
    if (isPast) return;
    const lag = (days: number, isMaximum: boolean): Lag => {
      return { from, to, kind, days, isMaximum, calendar, relationship };
    };
    if (minimumLag !== undefined) lags.push(lag(minimumLag, false));
    if (maximumLag !== undefined) lags.push(lag(maximumLag, true));
  });
  if (!lags.some(lag => !lag.isMaximum && lag.days < 0) || !hasLoop(activities.length, lags)) return lags;
  return lags.map(lag => (lag.isMaximum || lag.days >= 0 ? lag : { ...turned(lag), isMaximum: true }));
}

/** The same condition said from the other end: a minimum of `L` is a maximum of `-L` the other way round. */
function turned(lag: Lag): Lag {
  return { ...lag, from: lag.to, to: lag.from, kind: TURNED[lag.kind], days: -lag.days };
}

/** Whether the minimum lags form a loop. */
export function hasLoop(count: number, lags: readonly Lag[]): boolean {
  const pairs = orderPairs(lags);
  const back = pairs.map(([from, to]) => [to, from] as const);
  return orderOf(count, linksOf(count, back), linksOf(count, pairs)).length < count;
}

/** The pairs that fix the order in which a pass takes the activities. */
export function orderPairs(lags: readonly Lag[]): (readonly [number, number])[] {
  return lags.filter(lag => !lag.isMaximum).map(lag => [lag.from, lag.to] as const);
}

/** The minimum and maximum lags as lists, as a {@link DatedNet} holds them. */
export function arcListsOf(
  count: number,
  lags: readonly Lag[],
): Pick<DatedNet, 'minimums' | 'waits' | 'lagged' | 'maximums' | 'pulls'> {
  const pulls = lags.filter(lag => lag.isMaximum).map(turned);
  const minimums = lags.filter(lag => !lag.isMaximum);
  const isWait = (lag: Lag): boolean => lag.kind === 'FS' && (lag.days === 0 || lag.calendar < 0);
  return {
    minimums: arcsOf(count, minimums, 'to'),
    waits: arcsOf(count, minimums.filter(isWait), 'to'),
    lagged: arcsOf(
      count,
      minimums.filter(lag => !isWait(lag)),
      'to',
    ),
    maximums: arcsOf(count, pulls, 'from'),
    pulls: arcsOf(count, pulls, 'to'),
  };
}

/** The lags as lists by the activity at one of their ends, each list in the given order. */
function arcsOf(count: number, lags: readonly Lag[], by: 'from' | 'to'): Arcs {
  const other = by === 'from' ? 'to' : 'from';
  const first = new Int32Array(count + 1);
  for (const lag of lags) first[lag[by] + 1] = intAt(first, lag[by] + 1) + 1;
  for (let i = 0; i < count; i++) first[i + 1] = intAt(first, i + 1) + intAt(first, i);
  const next = first.slice();
  const made = () => new Int32Array(lags.length);
  const arcs = { first, other: made(), ends: made(), lag: made(), calendar: made() };
  for (const lag of lags) {
    const place = intAt(next, lag[by]);
    next[lag[by]] = place + 1;
    arcs.other[place] = lag[other];
    arcs.ends[place] = ENDS[lag.kind];
    arcs.lag[place] = lag.days;
    arcs.calendar[place] = lag.calendar;
  }
  return arcs;
}

/** The lag with time running backwards. */
export function mirrored(lag: Lag): Lag {
  const { from, to, kind, days, isMaximum, calendar, relationship } = lag;
  return { from: to, to: from, kind: MIRRORED[kind], days, isMaximum, calendar, relationship };
}
