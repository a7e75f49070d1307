import type { ScheduleActivity, ScheduleProblem, ScheduleRelationship } from '../../../core/scheduling';
import type { WorkCalendar } from '../../../core/calendar';

/** A place where an activity can lie: boundaries between days, and the days between on which it works. */
interface Place {
  readonly start: number;
  readonly finish: number;
  readonly worked: readonly number[];
}

/**
 * The least possible finish of a small problem by trying every start of every activity, day by day, with the
 * platform's own dates. It shares nothing with the scheduler. Fixed durations only.
 * @returns the boundary after the last day, or undefined when nothing fits into the days tried.
 */
export function exhaustiveFinish(problem: ScheduleProblem, days: number): number | undefined {
  const places = problem.activities.map((_, i) => placesOf(problem, i, days));
  const chosen: Place[] = [];
  let best: number | undefined;
  const choose = (i: number, finish: number): void => {
    if (i === problem.activities.length) {
      best = finish;
      return;
    }
    for (const place of places[i] ?? []) {
      const reached = Math.max(finish, place.finish);
      if (best !== undefined && reached >= best) continue;
      chosen[i] = place;
      if (isAllowed(problem, chosen, i)) choose(i + 1, reached);
    }
  };
  choose(0, 0);
  return best;
}

function dateOf(problem: ScheduleProblem, day: number): string {
  return new Date(Date.parse(`${problem.horizonStart}T00:00:00Z`) + day * 86400000)
    .toISOString()
    .slice(0, 10);
}

function works(calendar: WorkCalendar | undefined, date: string): boolean {
  const weekday = new Date(`${date}T00:00:00Z`).getUTCDay();
  // Within the days tried, 1 March to the middle of May, there is no federal holiday.
  return calendar?.weekdays.some(day => day % 7 === weekday) ?? false;
}

function isOpen(problem: ScheduleProblem, activity: ScheduleActivity, day: number): boolean {
  const date = dateOf(problem, day);
  for (const id of activity.closures ?? []) {
    const closure = problem.closures?.[id];
    if (closure && closure.from <= date && date <= closure.to) return false;
  }
  const windows = activity.windows;
  if (windows?.every(({ from, to }) => date < from || to < date) === true) return false;
  if (activity.durationUnit === 'day') return true;
  const own = [
    activity.calendar,
    ...problem.resources.flatMap(r => (r.calendar && (activity.uses?.[r.id] ?? 0) > 0 ? [r.calendar] : [])),
  ];
  return own.every(id => works(problem.calendars[id], date));
}

function placesOf(problem: ScheduleProblem, i: number, days: number): Place[] {
  const activity = problem.activities[i];
  if (!activity) return [];
  const notBefore = Array.from({ length: days }, (_, d) => d).find(
    d => dateOf(problem, d) >= (activity.notBefore ?? ''),
  );
  const length = (activity.workDays ?? 0) + (activity.consecutive?.weatherDays ?? 0);
  const places: Place[] = [];
  for (let start = notBefore ?? days; start < days; start++) {
    const place =
      length === 0 ? momentAt(problem, activity, start) : placeAt(problem, activity, start, length, days);
    if (place) places.push(place);
  }
  return places;
}

function momentAt(problem: ScheduleProblem, activity: ScheduleActivity, day: number): Place | undefined {
  if (!isOpen(problem, activity, day)) return undefined;
  const moment = day + (isClosing(problem, activity.id) ? 1 : 0);
  return { start: moment, finish: moment, worked: [] };
}

function isClosing(problem: ScheduleProblem, id: string): boolean {
  return problem.relationships.some(({ from, to, kind }) => {
    if (to !== id) return false;
    const before = problem.activities.find(a => a.id === from);
    return before?.workDays === 0 ? isClosing(problem, from) : kind.startsWith('F');
  });
}

function placeAt(
  problem: ScheduleProblem,
  activity: ScheduleActivity,
  start: number,
  length: number,
  days: number,
): Place | undefined {
  const worked: number[] = [];
  for (let day = start; day < days && worked.length < length; day++) {
    if (isOpen(problem, activity, day)) worked.push(day);
    else if (day === start || activity.consecutive) return undefined;
  }
  return worked.length === length ? { start, finish: (worked.at(-1) ?? start) + 1, worked } : undefined;
}

function isAllowed(problem: ScheduleProblem, chosen: readonly Place[], i: number): boolean {
  const position = (id: string) => problem.activities.findIndex(a => a.id === id);
  for (const relationship of problem.relationships) {
    const [from, to] = [position(relationship.from), position(relationship.to)];
    if (Math.max(from, to) !== i) continue;
    const [a, b] = [chosen[from], chosen[to]];
    if (a && b && !keepsLag(problem, relationship, a, b)) return false;
  }
  return keepsApart(problem, chosen, i) && keepsCapacity(problem, chosen, i);
}

function keepsLag(
  problem: ScheduleProblem,
  relationship: ScheduleRelationship,
  from: Place,
  to: Place,
): boolean {
  const a = relationship.kind.startsWith('F') ? from.finish : from.start;
  const b = relationship.kind.endsWith('F') ? to.finish : to.start;
  const calendar = problem.calendars[problem.activities.find(x => x.id === relationship.to)?.calendar ?? ''];
  const between = (): number => {
    let count = 0;
    for (let day = Math.min(a, b); day < Math.max(a, b); day++)
      if (relationship.lagUnit === 'day' || works(calendar, dateOf(problem, day))) count++;
    return b >= a ? count : -count;
  };
  const lag = relationship.lag ?? 0;
  if ((lag === 0 ? b - a : between()) < lag) return false;
  const most = relationship.maximumLag;
  return most === undefined || (most === 0 ? b - a : between()) <= most;
}

function keepsApart(problem: ScheduleProblem, chosen: readonly Place[], i: number): boolean {
  const touches = (a = '', b = '') =>
    a === b ||
    (problem.zones ?? []).some(
      z => (z.id === a && z.touches?.includes(b)) ?? (z.id === b && z.touches?.includes(a)),
    );
  const near = (a = '', b = '') => touches(a, b) || touches(b, a);
  const own = chosen[i];
  return (problem.exclusions ?? []).every(({ first, second }) =>
    problem.activities.slice(0, i).every((other, j) => {
      const me = problem.activities[i];
      const isPair =
        (first.includes(other.id) && second.includes(me?.id ?? '')) ||
        (second.includes(other.id) && first.includes(me?.id ?? ''));
      const place = chosen[j];
      if (!isPair || !place || !own || !near(other.place, me?.place)) return true;
      const isMilestone = place.start === place.finish || own.start === own.finish;
      return isMilestone || place.finish <= own.start || own.finish <= place.start;
    }),
  );
}

function keepsCapacity(problem: ScheduleProblem, chosen: readonly Place[], i: number): boolean {
  const own = chosen[i];
  const me = problem.activities[i];
  if (!own || !me) return false;
  for (let day = own.start; day < own.finish; day++) {
    for (const resource of problem.resources) {
      const holds = (j: number) => {
        const place = chosen[j];
        const isHeld =
          place &&
          place.start <= day &&
          day < place.finish &&
          (resource.heldOnIdleDays === true || place.worked.includes(day));
        return isHeld === true ? (problem.activities[j]?.uses?.[resource.id] ?? 0) : 0;
      };
      const used = Array.from({ length: i + 1 }, (_, j) => holds(j)).reduce((a, b) => a + b, 0);
      const change = resource.capacityChanges?.findLast(
        c => c.from <= dateOf(problem, day) && dateOf(problem, day) <= c.to,
      );
      if (used > 0 && holds(i) > 0 && used > (change?.capacity ?? resource.capacity)) return false;
    }
    const zone = problem.zones?.find(z => z.id === me.place);
    const inZone = (j: number) =>
      problem.activities[j]?.place === zone?.id && chosen[j]?.worked.includes(day) === true
        ? (problem.activities[j]?.crewSize ?? 0)
        : 0;
    const workers = Array.from({ length: i + 1 }, (_, j) => inZone(j)).reduce((a, b) => a + b, 0);
    if (zone?.crewLimit !== undefined && inZone(i) > 0 && workers > zone.crewLimit) return false;
  }
  return true;
}
