import { at, known } from '../../base';
import type { Exclusion, ScheduleProblem } from '../model';
import type { SearchExclusion } from '../search';

/** Activities that one exclusion keeps apart: none of the first runs at the same time as any of the second. */
export interface ExcludedGroup extends SearchExclusion {
  readonly exclusion: string;
}

/**
 * What exclusions keep apart, zone by zone. Positions in `problem.activities`.
 * @param canMeet whether an activity can be met at all: milestones and what has happened cannot.
 */
export function excludedGroups(
  problem: ScheduleProblem,
  position: ReadonlyMap<string, number>,
  canMeet: (activity: number) => boolean,
): ExcludedGroup[] {
  const touches = touchingZones(problem);
  return (problem.exclusions ?? []).flatMap(exclusion => {
    const here = (ids: readonly string[]) => [...new Set(ids.map(id => known(position, id)))].filter(canMeet);
    const [first, second] = [here(exclusion.first), here(exclusion.second)];
    return groupsOf(exclusion, problem, first, second, touches)
      .filter(group => group.first.length > 0 && group.second.length > 0)
      .map(group => ({ ...group, exclusion: exclusion.id }));
  });
}

function groupsOf(
  { reach }: Exclusion,
  problem: ScheduleProblem,
  first: readonly number[],
  second: readonly number[],
  touches: (a: string, b: string) => boolean,
): SearchExclusion[] {
  if (reach === 'anywhere') return [{ first, second }];
  // Without a place an activity is nowhere near another: it is a place of its own that touches none.
  const placeOf = (i: number) => at(problem.activities, i).place;
  const placesOf = (group: readonly number[]) =>
    new Set(group.map(placeOf).filter(place => place !== undefined));
  const [places, others] = [placesOf(first), placesOf(second)];
  return [...places].map(place => {
    const near = new Set<string | undefined>(
      [...others].filter(q => q === place || (reach !== 'zone' && touches(place, q))),
    );
    return {
      first: first.filter(i => placeOf(i) === place),
      second: second.filter(i => near.has(placeOf(i))),
    };
  });
}

/** Whether two zones share a boundary, named on either side. */
export function touchingZones(problem: ScheduleProblem): (a: string, b: string) => boolean {
  const touching = new Map((problem.zones ?? []).map(zone => [zone.id, new Set(zone.touches ?? [])]));
  return (a, b) => touching.get(a)?.has(b) === true || touching.get(b)?.has(a) === true;
}
