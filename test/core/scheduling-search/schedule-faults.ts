import type { SearchProblem, WorkDays } from '../../../core/scheduling/search';

/**
 * What is wrong with a schedule, found day by day from the problem alone: nothing of the search is used, only the
 * two tables of a calendar, turned back into a list of work days.
 */
export function scheduleFaults(problem: SearchProblem, starts: ArrayLike<number>): string[] {
  const finishes = problem.activities.map((_, i) => finishDay(problem, i, starts[i] ?? -1));
  return [
    ...dateFaults(problem, starts, finishes),
    ...relationshipFaults(problem, starts, finishes),
    ...resourceFaults(problem, starts, finishes),
    ...exclusionFaults(problem, starts, finishes),
  ];
}

/** The finish moment of an activity: counts work days one by one. */
export function finishDay(problem: SearchProblem, i: number, start: number): number {
  let left = problem.activities[i]?.duration ?? 0;
  let day = start;
  while (left > 0 && day < problem.horizon) {
    if (isWork(problem, problem.activities[i]?.calendar, day)) left--;
    day++;
  }
  return left > 0 ? Infinity : day;
}

function isWork(problem: SearchProblem, calendar: number | undefined, day: number): boolean {
  if (calendar === undefined) return true;
  return isWorkDay(problem.calendars[calendar], day);
}

function isWorkDay(days: WorkDays | undefined, day: number): boolean {
  return days !== undefined && days.indexOfDay[day] !== days.indexOfDay[day + 1];
}

function dateFaults(
  problem: SearchProblem,
  starts: ArrayLike<number>,
  finishes: readonly number[],
): string[] {
  return problem.activities.flatMap((activity, i) => {
    const start = starts[i] ?? -1;
    const finish = finishes[i] ?? Infinity;
    const faults: string[] = [];
    if (!Number.isInteger(start) || start < 0) faults.push(`${i} starts at ${start}`);
    if (finish > Math.min(problem.horizon, activity.latestFinish ?? Infinity))
      faults.push(`${i} finishes late`);
    if (activity.fixedStart !== undefined) {
      if (start !== activity.fixedStart) faults.push(`${i} is not at its fixed start`);
      return faults;
    }
    if (start < (activity.notBefore ?? 0)) faults.push(`${i} starts before its date`);
    if (activity.startAllowed && activity.startAllowed[start] !== 1)
      faults.push(`${i} starts outside its window`);
    if (activity.duration > 0 && !isWork(problem, activity.calendar, start))
      faults.push(`${i} starts on an idle day`);
    return faults;
  });
}

function relationshipFaults(
  problem: SearchProblem,
  starts: ArrayLike<number>,
  finishes: readonly number[],
): string[] {
  return problem.relationships.flatMap((link, place) => {
    const fixed = [link.from, link.to].every(i => problem.activities[i]?.fixedStart !== undefined);
    if (fixed) return [];
    const a = (link.kind.startsWith('F') ? finishes[link.from] : starts[link.from]) ?? NaN;
    const b = (link.kind.endsWith('F') ? finishes[link.to] : starts[link.to]) ?? NaN;
    const between = workDaysBetween(problem, link.calendar, a, b);
    const { minimumLag: minimum, maximumLag: maximum } = link;
    const faults: string[] = [];
    if (minimum !== undefined && (minimum === 0 ? b < a : between < minimum))
      faults.push(`lag ${place} too short`);
    if (maximum !== undefined && (maximum === 0 ? b > a : between > maximum))
      faults.push(`lag ${place} too long`);
    return faults;
  });
}

function workDaysBetween(problem: SearchProblem, calendar: number | undefined, a: number, b: number): number {
  let count = 0;
  for (let day = Math.min(a, b); day < Math.max(a, b); day++) if (isWork(problem, calendar, day)) count++;
  return b >= a ? count : -count;
}

function resourceFaults(
  problem: SearchProblem,
  starts: ArrayLike<number>,
  finishes: readonly number[],
): string[] {
  const faults: string[] = [];
  for (let day = 0; day < problem.horizon; day++) {
    const running = problem.activities
      .map((activity, i) => ({ activity, i }))
      .filter(({ i }) => (starts[i] ?? -1) <= day && day < (finishes[i] ?? 0));
    problem.resources.forEach((resource, r) => {
      const taking = running.filter(
        ({ activity }) => resource.isHeldOnIdleDays === true || isWork(problem, activity.calendar, day),
      );
      const floats = taking.filter(
        ({ activity }) => activity.fixedStart === undefined && (activity.demands[r] ?? 0) > 0,
      );
      const used = taking.reduce((sum, { activity }) => sum + (activity.demands[r] ?? 0), 0);
      const units = resource.capacityByDay?.[day] ?? resource.capacity;
      if (used > units && floats.length > 0) faults.push(`resource ${r} on day ${day}: ${used} of ${units}`);
    });
  }
  return faults;
}

function exclusionFaults(
  problem: SearchProblem,
  starts: ArrayLike<number>,
  finishes: readonly number[],
): string[] {
  const pairs = problem.exclusions.flatMap(({ first, second }) =>
    first.flatMap(a => second.map(b => [a, b] as const)),
  );
  return pairs.flatMap(([a, b]) => {
    const startA = starts[a] ?? 0;
    const startB = starts[b] ?? 0;
    const overlaps = startA < (finishes[b] ?? 0) && startB < (finishes[a] ?? 0);
    const hasLength = (finishes[a] ?? 0) > startA && (finishes[b] ?? 0) > startB;
    return overlaps && hasLength ? [`${a} and ${b} run together`] : [];
  });
}
