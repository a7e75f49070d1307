import type { Finding } from '../../base';
import type { ScheduleResource } from '../model';
import type { Day } from './day-list';
import type { CheckedActivity, Facts } from './facts';
import { wrong } from './wrong';

/** On no day more is in use than there is: of any resource, and of room for workers in any zone. */
export function checkResources(facts: Facts): Finding[] {
  const planned = [...facts.activities.values()].filter(
    a => a.asked.actualFinish === undefined && a.crew.workDays > 0,
  );
  return [
    ...facts.problem.resources.flatMap(resource => checkResource(facts, resource, planned)),
    ...(facts.problem.zones ?? []).flatMap(zone => {
      const { crewLimit } = zone;
      if (crewLimit === undefined) return [];
      const inside = planned.filter(activity => activity.asked.place === zone.id);
      const used = (i: number) =>
        sum(inside, a => (isPlannedOn(facts, a, i) && a.worked[i] === true ? a.crew.crewSize : 0));
      return firstOver(facts, used, () => crewLimit, `/zones/${zone.id}`, zone.title);
    }),
  ];
}

function checkResource(
  facts: Facts,
  resource: ScheduleResource,
  planned: readonly CheckedActivity[],
): Finding[] {
  const users = planned.filter(activity => (activity.crew.uses[resource.id] ?? 0) > 0);
  const used = (i: number) =>
    sum(users, activity => {
      const isHeld =
        isPlannedOn(facts, activity, i) && (activity.worked[i] === true || resource.heldOnIdleDays === true);
      return isHeld ? (activity.crew.uses[resource.id] ?? 0) : 0;
    });
  const peak = facts.days.reduce((most, _, i) => Math.max(most, used(i)), 0);
  const told = facts.result.resourcePeaks[resource.id]?.units;
  const findings = firstOver(
    facts,
    used,
    day => capacityOn(resource, day),
    `/resources/${resource.id}`,
    resource.title,
  );
  if (told !== peak)
    findings.push(
      wrong(
        'peak',
        `/resources/${resource.id}`,
        `${resource.title} peaks at ${peak}, not ${told ?? 'nothing'}.`,
      ),
    );
  return findings;
}

/** Work begun holds its resources from the day it resumes. */
function isPlannedOn(facts: Facts, activity: CheckedActivity, day: number): boolean {
  const from =
    activity.given.resumed === undefined
      ? activity.first
      : (facts.position.get(activity.given.resumed) ?? activity.first);
  return from <= day && day <= activity.last;
}

function capacityOn(resource: ScheduleResource, day: Day): number {
  const changes = (resource.capacityChanges ?? []).filter(
    change => change.from <= day.date && day.date <= change.to,
  );
  return changes.at(-1)?.capacity ?? resource.capacity;
}

function firstOver(
  facts: Facts,
  used: (day: number) => number,
  capacity: (day: Day) => number,
  place: string,
  title: string,
): Finding[] {
  const day = facts.days.find((candidate, i) => used(i) > Math.max(0, capacity(candidate)));
  return day ? [wrong('capacity', place, `${title}: more in use on ${day.date} than there is.`)] : [];
}

function sum(list: readonly CheckedActivity[], of: (activity: CheckedActivity) => number): number {
  return list.reduce((total, activity) => total + of(activity), 0);
}
