import type { Finding } from '../../base';
import type { ScheduleResource } from '../model';
import { isAtWork, type CheckedActivity, type Facts } from './facts';
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
      const used = usedByDay(facts, inside, false, activity => activity.crew.crewSize);
      return firstOver(facts, used, () => crewLimit, `/zones/${zone.id}`, zone.title);
    }),
  ];
}

function checkResource(
  facts: Facts,
  resource: ScheduleResource,
  planned: readonly CheckedActivity[],
): Finding[] {
  const unitsOf = (activity: CheckedActivity) => activity.crew.uses[resource.id] ?? 0;
  const users = planned.filter(activity => unitsOf(activity) > 0);
  const used = usedByDay(facts, users, resource.heldOnIdleDays === true, unitsOf);
  const peak = used.reduce((most, units) => Math.max(most, units), 0);
  const told = facts.result.resourcePeaks[resource.id]?.units;
  const place = `/resources/${resource.id}`;
  const findings = firstOver(facts, used, date => capacityOn(resource, date), place, resource.title);
  if (told !== peak)
    findings.push(wrong('peak', place, `${resource.title} peaks at ${peak}, not ${told ?? 'nothing'}.`));
  return findings;
}

/** Units in use on each day of the list. Work begun holds its resources from the day it resumes. */
function usedByDay(
  facts: Facts,
  users: readonly CheckedActivity[],
  isHeldOnIdleDays: boolean,
  unitsOf: (activity: CheckedActivity) => number,
): number[] {
  const used = facts.days.map(() => 0);
  for (const user of users) {
    const from = user.given.resumed === undefined ? user.first : user.planned;
    for (let day = from; day <= user.last; day++) {
      if (isHeldOnIdleDays || isAtWork(user, day)) used[day] = (used[day] ?? 0) + unitsOf(user);
    }
  }
  return used;
}

function capacityOn(resource: ScheduleResource, date: string): number {
  const change = resource.capacityChanges?.findLast(({ from, to }) => from <= date && date <= to);
  return change?.capacity ?? resource.capacity;
}

function firstOver(
  facts: Facts,
  used: readonly number[],
  capacity: (date: string) => number,
  place: string,
  title: string,
): Finding[] {
  const day = facts.days.find(({ date }, i) => {
    const units = used[i] ?? 0;
    return units > 0 && units > capacity(date);
  });
  return day ? [wrong('capacity', place, `${title}: more in use on ${day.date} than there is.`)] : [];
}
