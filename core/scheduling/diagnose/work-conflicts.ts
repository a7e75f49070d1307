import { isoOf } from '../../calendar';
import { at } from '../../base';
import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import { NEVER } from '../time';
import { namesOf } from '../words';
import type { EarliestStarts } from './earliest';
import { latestFinishes } from './latest';

/**
 * Work that all lies between the same two days and is more than the resource can do between them.
 * @source the energetic argument, J. Erschler, P. Lopez, C. Thuriot, 1991 (from memory).
 */
export function workConflicts(compiled: Compiled, earliest: EarliestStarts): ConflictSet[] {
  const latest = latestFinishes(compiled.search);
  if (!latest?.some(finish => finish < NEVER)) return [];
  return compiled.resources.flatMap(
    (_, resource) => firstConflict(compiled, earliest, latest, resource) ?? [],
  );
}

function firstConflict(
  compiled: Compiled,
  earliest: EarliestStarts,
  latest: Int32Array,
  resource: number,
): ConflictSet | undefined {
  const users = compiled.problem.activities.flatMap((_, i) => {
    const { demands, fixedStart } = at(compiled.search.activities, i);
    const isPlanned = at(demands, resource) > 0 && fixedStart === undefined && at(latest, i) < NEVER;
    return isPlanned ? [i] : [];
  });
  for (const last of [...new Set(users.map(i => at(latest, i)))].sort((a, b) => a - b)) {
    const due = users.filter(i => at(latest, i) <= last);
    const from = due.reduce((first, i) => Math.min(first, at(earliest.starts, i)), last);
    const needed = due.reduce((sum, i) => sum + unitDays(compiled, i, resource), 0);
    const offered = unitDaysOffered(compiled, due, resource, from, last);
    if (needed > offered) return conflict(compiled, resource, due, { from, last, needed, offered });
  }
  return undefined;
}

function unitDays(compiled: Compiled, activity: number, resource: number): number {
  const { duration, demands } = at(compiled.search.activities, activity);
  return duration * at(demands, resource);
}

/** Unit days at hand on days on which any of the activities can work. */
function unitDaysOffered(
  compiled: Compiled,
  users: readonly number[],
  resource: number,
  from: number,
  last: number,
): number {
  const open = [...new Set(users.map(i => at(compiled.activities, i).open.flags))];
  const { capacity, capacityByDay } = at(compiled.search.resources, resource);
  let offered = 0;
  for (let day = from; day < last; day++) {
    if (open.some(flags => flags[day] === 1)) offered += capacityByDay ? at(capacityByDay, day) : capacity;
  }
  return offered;
}

function conflict(
  compiled: Compiled,
  resource: number,
  due: readonly number[],
  span: { readonly from: number; readonly last: number; readonly needed: number; readonly offered: number },
): ConflictSet {
  const names = namesOf(compiled.problem);
  const origin = at(compiled.resources, resource);
  const activities = due.map(i => at(compiled.problem.activities, i).id);
  const what = 'zone' in origin ? `the room in ${names.zone(origin.zone)}` : names.resource(origin.resource);
  const days = `from ${isoOf(compiled.first + span.from)} to ${isoOf(compiled.first + span.last - 1)}`;
  const sentence = `${names.activities(activities)} need ${span.needed} unit days of ${what} ${days}, but there are ${span.offered}.`;
  const resources = 'resource' in origin ? [origin.resource] : [];
  return { kind: 'work', activities, relationships: [], resources, sentence };
}
