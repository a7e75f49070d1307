import type { Holding, ScheduledActivity } from '../result';

/**
 * The resource-constrained critical chain: from the activity that finishes last back along what holds each one
 * (a relationship, the crew or crane another activity has, an exclusion), to one that nothing else holds.
 * Where several hold, the one without float goes first, then the one that finishes last.
 * @source S. Bowers, Criticality in resource constrained networks, J. Oper. Res. Soc. 46 (1995) 80-91 (from memory).
 */
export function criticalChain(activities: readonly ScheduledActivity[]): string[] {
  const byId = new Map(activities.map(activity => [activity.id, activity]));
  const chain: string[] = [];
  const seen = new Set<string>();
  let link = pick(activities);
  while (link && !seen.has(link.id)) {
    seen.add(link.id);
    chain.push(link.id);
    const holders = link.heldBy.flatMap(holdersIn).flatMap(id => byId.get(id) ?? []);
    link = pick(holders.filter(holder => !seen.has(holder.id)));
  }
  return chain.reverse();
}

function holdersIn(holding: Holding): readonly string[] {
  if (holding.kind === 'relationship') return [holding.from];
  if (holding.kind === 'resource' || holding.kind === 'crew-limit') return holding.activities;
  if (holding.kind === 'exclusion' || holding.kind === 'zone-state') return [holding.activity];
  return [];
}

function pick(candidates: readonly ScheduledActivity[]): ScheduledActivity | undefined {
  let best: ScheduledActivity | undefined;
  for (const candidate of candidates) {
    if (!best || rank(candidate) > rank(best)) best = candidate;
  }
  return best;
}

/** Sorts by finish, and among equal finishes the critical before the others. */
function rank(activity: ScheduledActivity): string {
  return `${activity.finish}${activity.critical ? 1 : 0}`;
}
