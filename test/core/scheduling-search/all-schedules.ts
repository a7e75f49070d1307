import { at } from '../../../core/base';
import type { SearchProblem } from '../../../core/scheduling/search';
import { finishDay, scheduleFaults } from './schedule-faults';

/** The problem with some of its activities alone, in the given order. */
export function partOf(problem: SearchProblem, some: readonly number[]): SearchProblem {
  const place = (i: number): number => some.indexOf(i);
  const isInside = (i: number): boolean => some.includes(i);
  return {
    ...problem,
    activities: some.map(i => at(problem.activities, i)),
    relationships: problem.relationships
      .filter(({ from, to }) => isInside(from) && isInside(to))
      .map(link => ({ ...link, from: place(link.from), to: place(link.to) })),
    exclusions: problem.exclusions.map(({ first, second }) => ({
      first: first.filter(isInside).map(place),
      second: second.filter(isInside).map(place),
    })),
  };
}

/** A start that an activity can have by itself, and its finish. */
interface Place {
  readonly start: number;
  readonly finish: number;
}

/**
 * The starts of every schedule that ends by a moment, found by trying all places of all activities. Nothing of the
 * search is used: rules of one and of two activities are those of {@link scheduleFaults}, capacities are added up day by
 * day. Only for the smallest problems, without fixed starts.
 */
export function allSchedules(problem: SearchProblem, end: number): readonly number[][] {
  const places = problem.activities.map((_, i) =>
    Array.from({ length: end + 1 }, (__, start) => ({ start, finish: finishDay(problem, i, start) })).filter(
      ({ start, finish }) => finish <= end && scheduleFaults(partOf(problem, [i]), [start]).length === 0,
    ),
  );
  const goTogether = pairTable(problem, end);
  const taken = problem.resources.map(() => new Int32Array(end + 1));
  const found: number[][] = [];
  const chosen: Place[] = [];
  const extend = (i: number): void => {
    const own = places[i];
    if (own === undefined) {
      found.push(chosen.map(({ start }) => start));
      return;
    }
    for (const place of own) {
      if (!chosen.every((other, j) => goTogether(j, other.start, i, place.start))) continue;
      if (!hold(problem, taken, i, place, 1)) continue;
      chosen.push(place);
      extend(i + 1);
      chosen.pop();
      hold(problem, taken, i, place, -1);
    }
  };
  extend(0);
  return found;
}

/** Whether two activities go together at two starts, leaving resources aside; each answer is found once. */
function pairTable(problem: SearchProblem, end: number) {
  const count = problem.activities.length;
  const isLinked = (j: number, i: number): boolean =>
    problem.relationships.some(({ from, to }) => (from === j && to === i) || (from === i && to === j)) ||
    problem.exclusions.length > 0;
  const tables = Array.from({ length: count * count }, (_, pair) => {
    const [j, i] = [Math.floor(pair / count), pair % count];
    const part = { ...partOf(problem, [j, i]), resources: [] };
    const fits = new Map<number, boolean>();
    return { part, fits, isFree: !isLinked(j, i) };
  });
  return (j: number, other: number, i: number, start: number): boolean => {
    const { part, fits, isFree } = at(tables, j * count + i);
    if (isFree) return true;
    const key = other * (end + 1) + start;
    const known = fits.get(key) ?? scheduleFaults(part, [other, start]).length === 0;
    fits.set(key, known);
    return known;
  };
}

/** Whether an activity works on a day of its stretch. */
export function worksOn(problem: SearchProblem, i: number, day: number): boolean {
  const days = problem.calendars[problem.activities[i]?.calendar ?? -1];
  return days === undefined || days.indexOfDay[day] !== days.indexOfDay[day + 1];
}

/** Units of a resource that an activity holds on a day of its stretch. */
export function heldOn(problem: SearchProblem, resource: number, i: number, day: number): number {
  const isHeld = problem.resources[resource]?.isHeldOnIdleDays === true || worksOn(problem, i, day);
  return isHeld ? (problem.activities[i]?.demands[resource] ?? 0) : 0;
}

/** Units of a resource there are on a day. */
export function unitsOn({ resources }: SearchProblem, resource: number, day: number): number {
  return resources[resource]?.capacityByDay?.[day] ?? resources[resource]?.capacity ?? 0;
}

/** Takes or gives back what an activity holds; where it does not fit nothing is taken. */
function hold(
  problem: SearchProblem,
  taken: readonly Int32Array[],
  i: number,
  { start, finish }: Place,
  sign: 1 | -1,
): boolean {
  for (const [r, used] of taken.entries()) {
    for (let day = start; sign > 0 && day < finish; day++) {
      const units = heldOn(problem, r, i, day);
      if (units > 0 && at(used, day) + units > unitsOn(problem, r, day)) return false;
    }
  }
  for (const [r, used] of taken.entries())
    for (let day = start; day < finish; day++) used[day] = at(used, day) + sign * heldOn(problem, r, i, day);
  return true;
}
