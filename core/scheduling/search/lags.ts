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
    const base = { from, to, kind, calendar, relationship };
    if (minimumLag !== undefined) lags.push({ ...base, days: minimumLag, isMaximum: false });
    if (maximumLag !== undefined) lags.push({ ...base, days: maximumLag, isMaximum: true });
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
  const into = (some: readonly Lag[]): Arcs =>
    arcsOf(
      count,
      some,
      lag => lag.to,
      lag => lag.from,
    );
  return {
    minimums: into(minimums),
    waits: into(minimums.filter(isWait)),
    lagged: into(minimums.filter(lag => !isWait(lag))),
    maximums: arcsOf(
      count,
      pulls,
      lag => lag.from,
      lag => lag.to,
    ),
    pulls: arcsOf(
      count,
      pulls,
      lag => lag.to,
      lag => lag.from,
    ),
  };
}

/** The lags as lists by one of their activities. */
function arcsOf(
  count: number,
  lags: readonly Lag[],
  by: (lag: Lag) => number,
  other: (lag: Lag) => number,
): Arcs {
  const links = linksOf(
    count,
    lags.map((lag, place) => [by(lag), place] as const),
  );
  const inOrder = Array.from(links.list, place => lags[place]).filter(lag => lag !== undefined);
  return {
    first: links.first,
    other: Int32Array.from(inOrder, other),
    ends: Int32Array.from(inOrder, lag => ENDS[lag.kind]),
    lag: Int32Array.from(inOrder, lag => lag.days),
    calendar: Int32Array.from(inOrder, lag => lag.calendar),
  };
}

/** The lag with time running backwards. */
export function mirrored(lag: Lag): Lag {
  return { ...lag, from: lag.to, to: lag.from, kind: MIRRORED[lag.kind] };
}
