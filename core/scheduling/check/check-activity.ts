import type { Finding } from '../../base';
import { checkClosure, parseIsoDate } from '../../calendar';
import type { CrewMode, ScheduleActivity, ScheduleProblem } from '../model';
import { fault, notADate, unknown } from './fault';

/** Everything wrong with one activity by itself and in what it names. */
export function checkActivity(
  activity: ScheduleActivity,
  problem: ScheduleProblem,
  known: KnownIds,
): Finding[] {
  const place = `/activities/${activity.id}`;
  return [
    ...checkNames(activity, problem, known, place),
    ...checkDurations(activity, place),
    ...checkDates(activity, place),
    ...checkProgress(activity, problem, place),
  ];
}

export interface KnownIds {
  readonly resources: ReadonlySet<string>;
  readonly zones: ReadonlySet<string>;
  readonly states: ReadonlySet<string>;
}

function checkNames(
  activity: ScheduleActivity,
  problem: ScheduleProblem,
  known: KnownIds,
  place: string,
): Finding[] {
  const findings: Finding[] = [];
  if (!problem.calendars[activity.calendar]) findings.push(unknown('calendar', activity.calendar, place));
  if (activity.place !== undefined && !known.zones.has(activity.place))
    findings.push(unknown('zone', activity.place, place));
  for (const id of activity.closures ?? [])
    if (!problem.closures?.[id]) findings.push(unknown('closure', id, place));
  const states = [activity.opensStates, activity.needsStates, activity.endsStates].flatMap(
    list => list ?? [],
  );
  for (const id of states) if (!known.states.has(id)) findings.push(unknown('zone state', id, place));
  const uses = [activity.uses ?? {}, ...(activity.modes ?? []).map(mode => mode.uses)];
  for (const id of uses.flatMap(Object.keys))
    if (!known.resources.has(id)) findings.push(unknown('resource', id, place));
  return findings;
}

function checkDurations(activity: ScheduleActivity, place: string): Finding[] {
  const fixed =
    activity.workDays === undefined
      ? []
      : [{ crewSize: activity.crewSize ?? 0, workDays: activity.workDays, uses: activity.uses ?? {} }];
  const crews: readonly CrewMode[] = activity.modes ?? fixed;
  if (crews.length === 0)
    return [
      fault(
        'duration',
        place,
        `${activity.title} has no duration.`,
        'Give its work days, or crews with theirs.',
      ),
    ];
  const numbers = crews.flatMap(crew => [crew.workDays, crew.crewSize, ...Object.values(crew.uses)]);
  numbers.push(activity.consecutive?.weatherDays ?? 0, activity.remaining ?? 0);
  const bad = numbers.filter(n => !Number.isInteger(n) || n < 0);
  const findings = bad.map(n =>
    fault(
      'whole-number',
      place,
      `${activity.title} has ${n} where a whole number is due.`,
      'Use whole work days, workers and units, 0 or more.',
    ),
  );
  const mode = activity.plannedMode ?? 0;
  if (activity.modes && !activity.modes[mode])
    findings.push(
      fault('mode', place, `${activity.title} has no crew number ${mode + 1}.`, 'Choose one of its crews.'),
    );
  return findings;
}

function checkDates(activity: ScheduleActivity, place: string): Finding[] {
  const dates = [activity.notBefore, activity.deadline, activity.actualStart, activity.actualFinish];
  const bad = dates.filter(date => date !== undefined && parseIsoDate(date) === undefined);
  const windows = (activity.windows ?? []).flatMap(w =>
    checkClosure({ id: 'window', title: `A window of ${activity.title}`, ...w }, place),
  );
  return [...bad.map(date => notADate(place, String(date))), ...windows];
}

function checkProgress(activity: ScheduleActivity, problem: ScheduleProblem, place: string): Finding[] {
  const { actualStart, actualFinish, title } = activity;
  if (actualStart === undefined) {
    return actualFinish === undefined
      ? []
      : [fault('progress', place, `${title} has finished but not started.`, 'Give its actual start.')];
  }
  const findings: Finding[] = [];
  const say = (message: string, remedy: string) => findings.push(fault('progress', place, message, remedy));
  if (problem.statusDate === undefined)
    say(`${title} has started, but the project has no status date.`, 'Give the status date.');
  const last = actualFinish ?? actualStart;
  if (last < actualStart)
    say(`${title} finished on ${last}, before it started on ${actualStart}.`, 'Exchange the dates.');
  if (actualStart < problem.horizonStart)
    say(
      `${title} started on ${actualStart}, before the project on ${problem.horizonStart}.`,
      'Start the project earlier.',
    );
  if (problem.statusDate !== undefined && last >= problem.statusDate) {
    say(
      `${title} has an actual date ${last} that is not before the status date ${problem.statusDate}.`,
      'Move the status date after it, or take the actual date out.',
    );
  }
  return findings;
}
