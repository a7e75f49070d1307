import type { CrewMode, ScheduleActivity, ScheduleProblem } from '../model';
import type { ScheduledActivity, ScheduleResult } from '../result';
import { daysOfProblem, type Day } from './day-list';
import { isWorked, mayWork, workRules } from './day-rules';

/** One activity of the answer beside the one that was asked for, with its days by position in the list of days. */
export interface CheckedActivity {
  readonly asked: ScheduleActivity;
  readonly given: ScheduledActivity;
  readonly crew: CrewMode;
  /** Positions of the first and last day. */
  readonly first: number;
  readonly last: number;
  /** Boundaries between days: a start lies before its first day, a finish after its last. */
  readonly start: number;
  readonly finish: number;
  /** The boundary from which it holds what it uses: of work begun, the day it resumes. */
  readonly planned: number;
  /** By position in the list of days 1 where it may work; those with the same rules share one list. */
  readonly open: Uint8Array;
}

/** Whether an activity works on a day of the list. */
export function isAtWork({ first, last, open }: CheckedActivity, day: number): boolean {
  return first <= day && day <= last && open[day] === 1;
}

/** Everything the checks look at. */
export interface Facts {
  readonly problem: ScheduleProblem;
  readonly result: ScheduleResult;
  readonly days: readonly Day[];
  readonly position: ReadonlyMap<string, number>;
  readonly activities: ReadonlyMap<string, CheckedActivity>;
  /** By calendar, and by position in the list of days, 1 where it works. */
  readonly worked: ReadonlyMap<string, Uint8Array>;
}

/** Lays problem and answer beside each other; activities whose dates are not days of the list are left out. */
export function factsOf(problem: ScheduleProblem, result: ScheduleResult): Facts {
  const latest = result.activities.reduce(
    (last, a) => (a.finish > last ? a.finish : last),
    problem.horizonStart,
  );
  const days = daysOfProblem(problem, latest);
  const position = new Map(days.map((day, i) => [day.date, i]));
  const worked = new Map(
    Object.keys(problem.calendars).map(
      id => [id, Uint8Array.from(days, day => Number(isWorked(problem, id, day)))] as const,
    ),
  );
  const closing = closingMilestones(problem, result);
  const given = new Map(result.activities.map(a => [a.id, a]));
  const activities = new Map<string, CheckedActivity>();
  const open = new Map<string, Uint8Array>();
  for (const asked of problem.activities) {
    const answer = given.get(asked.id);
    const first = answer && position.get(answer.start);
    const last = answer && position.get(answer.finish);
    if (!answer || first === undefined || last === undefined) continue;
    const crew = crewIn(asked, answer.mode);
    const isMilestone = crew.workDays === 0 && !asked.consecutive;
    const moment = closing.has(asked.id) ? first + 1 : first;
    const start = isMilestone ? moment : first;
    const rules = workRules(problem, asked, crew.uses);
    const mayWorkOn = (day: Day, i: number) =>
      mayWork(problem, asked, crew.uses, day, calendar => worked.get(calendar)?.[i] === 1);
    const flags = open.get(rules) ?? Uint8Array.from(days, (day, i) => Number(mayWorkOn(day, i)));
    open.set(rules, flags);
    activities.set(asked.id, {
      asked,
      given: answer,
      crew,
      first,
      last,
      start,
      finish: isMilestone ? moment : last + 1,
      planned: answer.resumed === undefined ? start : (position.get(answer.resumed) ?? start),
      open: flags,
    });
  }
  return { problem, result, days, position, activities, worked };
}

function crewIn(asked: ScheduleActivity, mode: number): CrewMode {
  const chosen = asked.modes?.[mode];
  return chosen ?? { crewSize: asked.crewSize ?? 0, workDays: asked.workDays ?? 0, uses: asked.uses ?? {} };
}

/** Milestones that follow the finish of work close their day; so do those that follow such a milestone. */
function closingMilestones(problem: ScheduleProblem, result: ScheduleResult): Set<string> {
  const mode = new Map(result.activities.map(a => [a.id, a.mode]));
  const milestones = new Set(
    problem.activities
      .filter(a => crewIn(a, mode.get(a.id) ?? 0).workDays === 0 && !a.consecutive)
      .map(a => a.id),
  );
  const closing = new Set<string>();
  for (let grown = -1; grown !== closing.size;) {
    grown = closing.size;
    for (const { from, to, kind } of problem.relationships) {
      if (!milestones.has(to)) continue;
      const afterWork = !milestones.has(from) && kind.startsWith('F');
      if (afterWork || closing.has(from)) closing.add(to);
    }
  }
  return closing;
}
