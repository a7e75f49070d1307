import { at } from '../compile/at';
import type { Compiled } from '../compile/compiled';
import type { ConflictSet } from '../result';
import { namesOf } from '../words';

/** Activities that ask for more than there ever is: of a resource, or of the room in a zone. */
export function capacityConflicts(compiled: Compiled): ConflictSet[] {
  const names = namesOf(compiled.problem);
  return compiled.resources.flatMap((origin, r) => {
    const most = mostUnits(compiled, r);
    return compiled.problem.activities.flatMap((activity, i) => {
      const demand = at(at(compiled.search.activities, i).demands, r);
      if (
        demand <= most ||
        compiled.activities[i]?.state === 'finished' ||
        compiled.activities[i]?.crew.workDays === 0
      )
        return [];
      const isZone = 'zone' in origin;
      const sentence = isZone
        ? `${activity.title} works with a crew of ${demand}, but ${names.zone(origin.zone)} has room for ${most}.`
        : `${activity.title} needs ${demand} of ${names.resource(origin.resource)}, but there are never more than ${most}.`;
      const resources = isZone ? [] : [origin.resource];
      return [
        {
          kind: isZone ? 'crew-limit' : 'capacity',
          activities: [activity.id],
          relationships: [],
          resources,
          sentence,
        },
      ];
    });
  });
}

function mostUnits(compiled: Compiled, resource: number): number {
  const { capacity, capacityByDay } = at(compiled.search.resources, resource);
  if (!capacityByDay) return capacity;
  let most = 0;
  for (let day = 0; day < compiled.search.horizon; day++) most = Math.max(most, at(capacityByDay, day));
  return most;
}
