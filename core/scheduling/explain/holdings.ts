import { isoOf } from '../../calendar';
import { momentOf } from '../bounds';
import { at } from '../../base';
import type { Link, Placed } from '../placed';
import type { Holding } from '../result';
import {
  finishFrom,
  firstMomentBefore,
  leastMoment,
  nextStart,
  previousStart,
  startForFinish,
} from '../time';
import { clashHoldings } from './clash-holdings';
import { idleHolding } from './idle';
import type { UnderWay } from './under-way';

/** What keeps an activity from starting earlier, the strongest reason first. */
export function holdingsOf(placed: Placed, days: UnderWay, activity: number): Holding[] {
  const { compiled, starts } = placed;
  const given = at(compiled.problem.activities, activity);
  if (at(compiled.activities, activity).state === 'finished')
    return [{ kind: 'actual', date: given.actualStart ?? '' }];
  const start = at(starts, activity);
  const logic = logicHoldings(placed, activity);
  const earliest = nextStart(compiled.search, activity, logic.moment);
  if (start <= earliest) {
    const idle = idleHolding(compiled, activity, logic.moment, start);
    if (!idle) return logic.holdings;
    const isLong = idle.kind === 'closure' || idle.kind === 'window';
    return isLong ? [idle, ...logic.holdings] : [...logic.holdings, idle];
  }
  return beyondLogic(placed, days, activity, start);
}

/** Why an activity that could start earlier by its relationships does not. */
function beyondLogic(placed: Placed, days: UnderWay, activity: number, start: number): Holding[] {
  const { search } = placed.compiled;
  const before = previousStart(search, activity, start - 1);
  const finish = at(placed.finishes, activity);
  placed.book.remove(activity);
  const clash =
    before < 0 ? undefined : placed.book.clash(activity, before, finishFrom(search, activity, before));
  const holdings = clash ? clashHoldings(placed, days, activity, clash) : [];
  placed.book.place(activity, start, finish);
  return holdings.length > 0 ? holdings : [{ kind: 'levelling' }];
}

/** The latest of all moments before which an activity may not start, and everything that sets that moment. */
function logicHoldings(placed: Placed, activity: number): { moment: number; holdings: Holding[] } {
  const { compiled } = placed;
  const reasons: { moment: number; holding: Holding }[] = [];
  for (const link of at(placed.into, activity)) reasons.push(relationshipReason(placed, activity, link));
  for (const link of at(placed.outOf, activity)) {
    if (link.relationship.maximumLag !== undefined) reasons.push(maximumLagReason(placed, activity, link));
  }
  reasons.push(...ownReasons(placed, activity));
  const moment = Math.max(0, ...reasons.map(reason => reason.moment));
  const holdings = reasons
    .filter(reason => reason.moment === moment && moment > 0)
    .map(reason => reason.holding);
  const start: Holding = { kind: 'start', date: isoOf(compiled.first) };
  return { moment, holdings: holdings.length > 0 ? holdings : [start] };
}

function relationshipReason(
  placed: Placed,
  activity: number,
  { index, relationship }: Link,
): { moment: number; holding: Holding } {
  const { compiled } = placed;
  const { search, problem } = compiled;
  const moment = leastMoment(search, relationship, momentOf(placed, relationship.from, relationship.kind[0]));
  const start = relationship.kind[1] === 'S' ? moment : startForFinish(search, activity, moment);
  const origin = at(compiled.relationships, index);
  if ('state' in origin) {
    const from = at(problem.activities, relationship.from).id;
    return {
      moment: start,
      holding: { kind: 'zone-state', state: origin.state, zone: origin.zone, activity: from },
    };
  }
  const given = at(problem.relationships, origin.relationship);
  const { from, kind: type, lag = 0, lagUnit = 'work-day' } = given;
  return {
    moment: start,
    holding: { kind: 'relationship', relationship: origin.relationship, from, type, lag, lagUnit },
  };
}

function maximumLagReason(
  placed: Placed,
  activity: number,
  { index, relationship }: Link,
): { moment: number; holding: Holding } {
  const { search, problem } = placed.compiled;
  const moment = firstMomentBefore(
    search,
    relationship,
    momentOf(placed, relationship.to, relationship.kind[1]),
  );
  const start = relationship.kind[0] === 'S' ? moment : startForFinish(search, activity, moment);
  const origin = at(placed.compiled.relationships, index);
  const number = 'relationship' in origin ? origin.relationship : -1;
  const given = at(problem.relationships, number);
  return {
    moment: start,
    holding: { kind: 'maximum-lag', relationship: number, from: given.from, to: given.to },
  };
}

function ownReasons(placed: Placed, activity: number): { moment: number; holding: Holding }[] {
  const { compiled } = placed;
  const given = at(compiled.problem.activities, activity);
  const limit = at(compiled.search.activities, activity).notBefore ?? 0;
  const isClosing = at(compiled.activities, activity).isClosing;
  const opened = limit - (isClosing ? 1 : 0);
  if (opened <= 0) return [];
  const date = isoOf(compiled.first + opened);
  const holding: Holding =
    given.notBefore === date ? { kind: 'not-before', date } : { kind: 'status-date', date };
  return [{ moment: limit, holding }];
}
