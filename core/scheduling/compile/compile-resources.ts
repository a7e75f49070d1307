import { dayOf } from '../../calendar';
import type { ScheduleProblem, ScheduleResource } from '../model';
import type { SearchResource } from '../search';
import type { CompiledActivity, ResourceOrigin } from './compiled';

/** The resources and the crew limits of zones, in packed form. */
export function packResources(
  problem: ScheduleProblem,
  first: number,
  horizon: number,
): { packed: SearchResource[]; origins: ResourceOrigin[] } {
  const limited = (problem.zones ?? []).flatMap(z =>
    z.crewLimit === undefined ? [] : [{ id: z.id, limit: z.crewLimit }],
  );
  return {
    packed: [
      ...problem.resources.map(resource => packResource(resource, first, horizon)),
      ...limited.map(zone => ({ capacity: zone.limit })),
    ],
    origins: [
      ...problem.resources.map(r => ({ resource: r.id })),
      ...limited.map(zone => ({ zone: zone.id })),
    ],
  };
}

/** What each activity at work asks of each packed resource. */
export function demandsOf(
  problem: ScheduleProblem,
  activities: readonly CompiledActivity[],
  origins: readonly ResourceOrigin[],
): number[][] {
  const zones = new Map<string, number>();
  const resources = new Map<string, number>();
  origins.forEach((origin, position) => {
    if ('zone' in origin) zones.set(origin.zone, position);
    else resources.set(origin.resource, position);
  });
  return activities.map(({ crew }, i) => {
    const demands = new Array<number>(origins.length).fill(0);
    for (const [id, units] of Object.entries(crew.uses)) {
      const position = resources.get(id);
      if (position !== undefined) demands[position] = units;
    }
    const zone = zones.get(problem.activities[i]?.place ?? '');
    if (zone !== undefined) demands[zone] = crew.crewSize;
    return demands;
  });
}

function packResource(resource: ScheduleResource, first: number, horizon: number): SearchResource {
  const held = resource.heldOnIdleDays === true ? { isHeldOnIdleDays: true } : {};
  if (!resource.capacityChanges?.length) return { capacity: resource.capacity, ...held };
  const capacityByDay = new Int32Array(horizon).fill(resource.capacity);
  for (const change of resource.capacityChanges) {
    const from = Math.max(0, dayOf(change.from) - first);
    const to = Math.max(0, dayOf(change.to) - first + 1);
    capacityByDay.fill(change.capacity, from, to);
  }
  return { capacity: resource.capacity, capacityByDay, ...held };
}
