import { dayOf } from '../../calendar';
import type { CrewMode, ScheduleActivity, ScheduleProblem, ScheduleResource } from '../model';
import type { SearchResource } from '../search';
import type { ResourceOrigin } from './compiled';

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

/** What one crew at work asks of each packed resource. */
export function demandsOf(
  activity: ScheduleActivity,
  crew: CrewMode,
  origins: readonly ResourceOrigin[],
): number[] {
  return origins.map(origin => {
    if ('zone' in origin) return origin.zone === activity.place ? crew.crewSize : 0;
    const units = crew.uses[origin.resource];
    return units === undefined ? 0 : units;
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
