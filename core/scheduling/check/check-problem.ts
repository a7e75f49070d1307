import { at, topologicalOrder, type Finding } from '../../base';
import { checkCalendar, checkClosure, parseIsoDate } from '../../calendar';
import type { ScheduleProblem, ScheduleRelationship, ScheduleResource } from '../model';
import { checkActivity } from './check-activity';
import { fault, notADate, unknown } from './fault';

/**
 * Every fault of a schedule problem: names that lead nowhere, dates that are none, durations that are not whole,
 * loops of relationships, progress that contradicts itself. Without findings the problem can be scheduled, or be
 * shown to have no schedule.
 */
export function checkProblem(problem: ScheduleProblem): Finding[] {
  const activities = new Set(problem.activities.map(a => a.id));
  const known = {
    resources: new Set(problem.resources.map(r => r.id)),
    zones: new Set((problem.zones ?? []).map(z => z.id)),
    states: new Set((problem.zoneStates ?? []).map(s => s.id)),
  };
  return [
    ...checkFrame(problem),
    ...checkUnique(problem),
    ...problem.resources.flatMap(resource => checkResource(resource, problem)),
    ...problem.activities.flatMap(activity => checkActivity(activity, problem, known)),
    ...problem.relationships.flatMap((r, i) => checkRelationship(r, i, activities)),
    ...checkGroups(problem, activities, known.zones),
    ...checkLoops(problem),
    ...checkStates(problem),
  ];
}

function checkFrame(problem: ScheduleProblem): Finding[] {
  const findings: Finding[] = [];
  if (parseIsoDate(problem.horizonStart) === undefined)
    findings.push(notADate('/horizonStart', problem.horizonStart));
  const { statusDate } = problem;
  if (statusDate !== undefined && parseIsoDate(statusDate) === undefined)
    findings.push(notADate('/statusDate', statusDate));
  for (const [id, calendar] of Object.entries(problem.calendars))
    findings.push(...checkCalendar(calendar, `/calendars/${id}`));
  for (const [id, closure] of Object.entries(problem.closures ?? {}))
    findings.push(...checkClosure(closure, `/closures/${id}`));
  return findings;
}

function checkUnique(problem: ScheduleProblem): Finding[] {
  const lists = { activities: problem.activities, resources: problem.resources, zones: problem.zones ?? [] };
  return Object.entries(lists).flatMap(([kind, list]) => {
    const ids = list.map(entry => entry.id);
    const twice = repeated(ids);
    return twice.map(id =>
      fault('duplicate', `/${kind}/${id}`, `The id "${id}" is given twice.`, 'Give each its own id.'),
    );
  });
}

function checkResource(resource: ScheduleResource, problem: ScheduleProblem): Finding[] {
  const place = `/resources/${resource.id}`;
  const findings: Finding[] = [];
  if (resource.calendar !== undefined && !problem.calendars[resource.calendar])
    findings.push(unknown('calendar', resource.calendar, place));
  for (const units of [
    resource.capacity,
    ...(resource.capacityChanges ?? []).map(change => change.capacity),
  ]) {
    if (Number.isInteger(units) && units >= 0) continue;
    findings.push(
      fault(
        'whole-number',
        place,
        `${resource.title} has ${units} units at hand.`,
        'Use whole units, 0 or more.',
      ),
    );
  }
  for (const change of resource.capacityChanges ?? []) {
    for (const date of [change.from, change.to])
      if (parseIsoDate(date) === undefined) findings.push(notADate(place, date));
  }
  return findings;
}

function checkRelationship(
  relationship: ScheduleRelationship,
  index: number,
  activities: ReadonlySet<string>,
): Finding[] {
  const place = `/relationships/${index}`;
  const ends = [relationship.from, relationship.to].filter(id => !activities.has(id));
  const findings = ends.map(id => unknown('activity', id, place));
  const { lag = 0, maximumLag = lag } = relationship;
  for (const days of [lag, maximumLag]) {
    if (!Number.isInteger(days))
      findings.push(fault('whole-number', place, `A lag of ${days} days.`, 'Use whole days.'));
  }
  if (maximumLag < lag) {
    findings.push(
      fault(
        'lag',
        place,
        `At least ${lag} and at most ${maximumLag} days cannot both lie between.`,
        'Raise the most or lower the least.',
      ),
    );
  }
  return findings;
}

function checkGroups(
  problem: ScheduleProblem,
  activities: ReadonlySet<string>,
  zones: ReadonlySet<string>,
): Finding[] {
  const named = [
    ...(problem.exclusions ?? []).map(e => ({
      place: `/exclusions/${e.id}`,
      ids: [...e.first, ...e.second],
    })),
    ...(problem.hammocks ?? []).map(h => ({
      place: `/hammocks/${h.id}`,
      ids: [...h.fromStartOf, ...h.toFinishOf],
    })),
  ];
  const lost = (problem.hammocks ?? []).filter(hammock => !problem.calendars[hammock.calendar]);
  return [
    ...named.flatMap(({ place, ids }) =>
      ids.filter(id => !activities.has(id)).map(id => unknown('activity', id, place)),
    ),
    ...lost.map(hammock => unknown('calendar', hammock.calendar, `/hammocks/${hammock.id}`)),
    ...(problem.zones ?? []).flatMap(zone =>
      (zone.touches ?? []).filter(id => !zones.has(id)).map(id => unknown('zone', id, `/zones/${zone.id}`)),
    ),
  ];
}

function checkLoops(problem: ScheduleProblem): Finding[] {
  const position = new Map(problem.activities.map((activity, i) => [activity.id, i]));
  const pairs = problem.relationships.flatMap(({ from, to }) => {
    const [a, b] = [position.get(from), position.get(to)];
    return a === undefined || b === undefined ? [] : [[a, b] as const];
  });
  const sorted = topologicalOrder(problem.activities.length, pairs);
  if ('order' in sorted) return [];
  const loop = sorted.loop.map(i => at(problem.activities, i));
  const message = `Each of these waits for the one before it, and the first for the last: ${loop.map(activity => activity.title).join(', ')}.`;
  const place = `/activities/${at(loop, 0).id}`;
  return [fault('loop', place, message, 'Take out one of the relationships between them.')];
}

function repeated(ids: readonly string[]): string[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const id of ids) (seen.has(id) ? twice : seen).add(id);
  return [...twice];
}

/** Work that needs a state nothing opens in its zone is planned without it, with a warning. */
function checkStates(problem: ScheduleProblem): Finding[] {
  const opened = new Set(
    problem.activities.flatMap(a => (a.opensStates ?? []).map(state => `${state} ${a.place ?? ''}`)),
  );
  return problem.activities.flatMap(activity =>
    (activity.needsStates ?? []).flatMap(state => {
      if (opened.has(`${state} ${activity.place ?? ''}`)) return [];
      const title = problem.zoneStates?.find(rule => rule.id === state)?.title ?? state;
      return [
        {
          code: 'schedule/state-not-opened',
          weight: 'warns' as const,
          place: `/activities/${activity.id}`,
          message: `${activity.title} needs ${title} in its zone, but nothing opens it there.`,
          meaning: 'It is scheduled as if the state held.',
          remedy: 'Add the activity that opens it in that zone.',
        },
      ];
    }),
  );
}
