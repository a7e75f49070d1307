import { at, BugError, known } from '../../base';
import type { ScheduleProblem, ScheduleRelationship } from '../model';
import type { SearchActivity, SearchRelationship } from '../search';
import type { CompiledActivity, RelationshipOrigin } from './compiled';
import type { DayTables } from './day-tables';
import { actualMoments } from './progress';
import type { StateOrder } from './zone-states';

/** Relationships in packed form, with the anchors that stand for the actual starts of work begun. */
export interface PackedRelationships {
  readonly packed: SearchRelationship[];
  readonly origins: RelationshipOrigin[];
  readonly anchors: SearchActivity[];
}

/** Packs the relationships of the problem and the order its zone states impose. */
export function packRelationships(
  problem: ScheduleProblem,
  activities: readonly CompiledActivity[],
  position: ReadonlyMap<string, number>,
  orders: readonly StateOrder[],
  tables: DayTables,
  resourceCount: number,
): PackedRelationships {
  const result: PackedRelationships = { packed: [], origins: [], anchors: [] };
  const anchors = new Map<number, number>();
  const anchorOf = (activity: number): number => {
    const there = anchors.get(activity);
    if (there !== undefined) return there;
    const made = problem.activities.length + result.anchors.length;
    const begun = actualMoments(at(problem.activities, activity), tables.first);
    if (begun === undefined) throw new BugError('only work that has begun has an anchor');
    result.anchors.push({
      duration: 0,
      demands: new Array<number>(resourceCount).fill(0),
      fixedStart: begun.start,
    });
    anchors.set(activity, made);
    return made;
  };
  problem.relationships.forEach((relationship, index) => {
    const [from, to] = [known(position, relationship.from), known(position, relationship.to)];
    if (isHistory(relationship, activities[from], activities[to])) return;
    const ofBegunStart = activities[from]?.state === 'begun' && relationship.kind[0] === 'S';
    const lags = packLags(relationship, calendarForLag(relationship, problem, to, tables));
    result.packed.push({ from: ofBegunStart ? anchorOf(from) : from, to, kind: relationship.kind, ...lags });
    result.origins.push({ relationship: index });
  });
  for (const { from, to, state, zone } of orders) {
    if (activities[to]?.state !== 'planned') continue;
    result.packed.push({ from, to, kind: 'FS', minimumLag: 0 });
    result.origins.push({ state, zone });
  }
  return result;
}

/** Whether a relationship joins what has already happened: its end cannot move any more. */
function isHistory(
  relationship: ScheduleRelationship,
  from: CompiledActivity | undefined,
  to: CompiledActivity | undefined,
): boolean {
  if (to?.state === 'finished') return true;
  if (to?.state !== 'begun' || relationship.kind[1] === 'F') return false;
  return relationship.kind === 'SS' ? from?.state !== 'planned' : from?.state === 'finished';
}

function calendarForLag(
  relationship: ScheduleRelationship,
  problem: ScheduleProblem,
  to: number,
  tables: DayTables,
): number | undefined {
  const isPlain = (relationship.lag ?? 0) === 0 && (relationship.maximumLag ?? 0) === 0;
  const calendar = problem.activities[to]?.calendar;
  if (isPlain || relationship.lagUnit === 'day' || calendar === undefined) return undefined;
  return tables.calendarDays(calendar).position;
}

function packLags(
  relationship: ScheduleRelationship,
  calendar: number | undefined,
): Pick<SearchRelationship, 'minimumLag' | 'maximumLag' | 'calendar'> {
  return {
    minimumLag: relationship.lag ?? 0,
    ...(relationship.maximumLag === undefined ? {} : { maximumLag: relationship.maximumLag }),
    ...(calendar === undefined ? {} : { calendar }),
  };
}
