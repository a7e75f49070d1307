import { at } from '../../base';
import type { DatedNet } from './dated-net';
import { hasLoop, type Lag } from './lags';
import { linksOf } from './plain-net';
import type { SearchConflict, SearchProblem } from './problem';
import { chainTo, type Earliest } from './propagate';
import { orderOf } from './tails';
import { peakOf } from './weights';

/** A conflict that can be seen before anything is compiled: too large a demand, or a loop of relationships. */
export function conflictOnSight(problem: SearchProblem, lags: readonly Lag[]): SearchConflict | undefined {
  const none = { activities: [], relationships: [], resources: [] };
  const peaks = problem.resources.map(peakOf);
  for (const [i, activity] of problem.activities.entries()) {
    if (activity.fixedStart !== undefined || activity.duration === 0) continue;
    const short = activity.demands.findIndex((units, r) => units > at(peaks, r));
    if (short >= 0) return { ...none, kind: 'demand above capacity', activities: [i], resources: [short] };
  }
  if (!hasLoop(problem.activities.length, lags)) return undefined;
  const ordered = lags.filter(lag => !lag.isMaximum);
  const pairs = ordered.map(lag => [lag.from, lag.to] as const);
  const count = problem.activities.length;
  const back = linksOf(
    count,
    pairs.map(([from, to]) => [to, from] as const),
  );
  const done = new Set(orderOf(count, back, linksOf(count, pairs)));
  const looped = ordered.filter(lag => !done.has(lag.from) && !done.has(lag.to));
  return {
    ...none,
    kind: 'loop of relationships',
    activities: [...new Set(looped.map(lag => lag.from))].sort((a, b) => a - b),
    relationships: [...new Set(looped.map(lag => lag.relationship))],
  };
}

/** A conflict of dates, windows, calendars, lags and closures that no use of resources can mend. */
export function conflictOfDates(
  problem: SearchProblem,
  net: DatedNet,
  earliest: Earliest,
): SearchConflict | undefined {
  if (earliest.broken < 0) return undefined;
  const activities = chainTo(net, earliest);
  const inChain = new Set(activities);
  const relationships = problem.relationships.flatMap((link, place) =>
    inChain.has(link.from) && inChain.has(link.to) ? [place] : [],
  );
  const only = problem.activities[earliest.broken];
  const isWindow = activities.length === 1 && only?.startAllowed !== undefined;
  return {
    kind: isWindow ? 'no allowed start' : 'no room between earliest start and latest finish',
    activities,
    relationships,
    resources: [],
  };
}
