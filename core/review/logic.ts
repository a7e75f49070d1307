import type { ReviewActivity, ReviewSchedule } from './input';
import type { Fault } from './standing';

/**
 * Loose ends: activities whose start hangs on nothing, or whose finish holds nothing. The first and the last of
 * the project may; a second of either kind is a loose end. Hammocks take their dates from others.
 */
export function looseEnds({ activities, relationships }: ReviewSchedule): Fault[] {
  const hung = activities.filter(one => one.kind !== 'hammock');
  const startsFree = hung.filter(
    one => !relationships.some(({ to, kind }) => to === one.id && (kind === 'FS' || kind === 'SS')),
  );
  const endsFree = hung.filter(
    one => !relationships.some(({ from, kind }) => from === one.id && (kind === 'FS' || kind === 'FF')),
  );
  const first = earliest(startsFree);
  const last = latest(endsFree);
  return [
    ...startsFree
      .filter(one => one.id !== first?.id)
      .map(one => ({ id: one.id, evidence: `the start of ${one.title} hangs on nothing` })),
    ...endsFree
      .filter(one => one.id !== last?.id)
      .map(one => ({ id: one.id, evidence: `nothing hangs on the finish of ${one.title}` })),
  ];
}

function earliest(activities: readonly ReviewActivity[]): ReviewActivity | undefined {
  const first = activities.map(one => one.start).toSorted()[0];
  return activities.find(one => one.start === first);
}

function latest(activities: readonly ReviewActivity[]): ReviewActivity | undefined {
  const last = activities
    .map(one => one.finish)
    .toSorted()
    .at(-1);
  return activities.find(one => one.finish === last);
}

/**
 * Walks back from the activity that finishes last through critical activities, by relationships and by links of a
 * shared crew or berth, and says where the chain breaks; `undefined` when it reaches an activity that starts first.
 */
export function breakOfCriticalChain(schedule: ReviewSchedule): Fault | undefined {
  const { activities, start, finish } = schedule;
  const byId = new Map(activities.map(one => [one.id, one]));
  const before = linksBefore(schedule);
  const last = activities.filter(one => one.kind !== 'hammock' && one.finish === finish && one.isCritical);
  if (last.length === 0) return { id: 'finish', evidence: `no critical activity ends on ${finish}` };
  const open = [...last];
  const seen = [...last];
  for (let one = open.pop(); one; one = open.pop()) {
    if (one.start === start) return undefined;
    for (const id of before.get(one.id) ?? []) {
      const other = byId.get(id);
      if (!other?.isCritical || seen.includes(other)) continue;
      seen.push(other);
      open.push(other);
    }
  }
  const breaks = seen.reduce((furthest, one) => (one.start < furthest.start ? one : furthest));
  return {
    id: breaks.id,
    evidence: `the activities without float form no unbroken chain: what comes before ${breaks.title} has float or is a date`,
  };
}

function linksBefore({ relationships, resourceLinks }: ReviewSchedule): Map<string, string[]> {
  const before = new Map<string, string[]>();
  for (const { from, to } of [...relationships, ...resourceLinks])
    before.set(to, [...(before.get(to) ?? []), from]);
  return before;
}
