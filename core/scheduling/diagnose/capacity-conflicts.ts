import { at } from '../../base';
import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import { namesOf } from '../words';

/** Activities that ask for more than there ever is: of a resource, or of the room in a zone. */
export function capacityConflicts(compiled: Compiled): ConflictSet[] {
  const { search, activities } = compiled;
  const conflicts: ConflictSet[] = [];
  compiled.resources.forEach((_, r) => {
    const most = mostUnits(compiled, r);
    for (let i = 0; i < activities.length; i++) {
      if (at(at(search.activities, i).demands, r) <= most) continue;
      const { state, crew } = at(activities, i);
      if (state !== 'finished' && crew.workDays > 0) conflicts.push(tooLarge(compiled, i, r, most));
    }
  });
  return conflicts;
}

function tooLarge(compiled: Compiled, i: number, r: number, most: number): ConflictSet {
  const names = namesOf(compiled.problem);
  const origin = at(compiled.resources, r);
  const { id, title } = at(compiled.problem.activities, i);
  const demand = at(at(compiled.search.activities, i).demands, r);
  const isZone = 'zone' in origin;
  const sentence = isZone
    ? `${title} works with a crew of ${demand}, but ${names.zone(origin.zone)} has room for ${most}.`
    : `${title} needs ${demand} of ${names.resource(origin.resource)}, but there are never more than ${most}.`;
  const resources = isZone ? [] : [origin.resource];
  return {
    kind: isZone ? 'crew-limit' : 'capacity',
    activities: [id],
    relationships: [],
    resources,
    sentence,
  };
}

function mostUnits(compiled: Compiled, resource: number): number {
  const { capacity, capacityByDay } = at(compiled.search.resources, resource);
  if (!capacityByDay) return capacity;
  let most = 0;
  for (let day = 0; day < compiled.search.horizon; day++) most = Math.max(most, at(capacityByDay, day));
  return most;
}
