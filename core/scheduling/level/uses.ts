import { at } from '../../base';
import type { Placed } from '../placed';
import type { Use } from './objective';
import { Profile } from './profile';

/** How a schedule uses each of its resources, by id. */
export function usesOf(placed: Placed): Readonly<Record<string, Use>> {
  const { problem, search } = placed.compiled;
  const uses = problem.resources.map(({ id }, resource) => {
    const profile = new Profile(usableDays(placed, resource, placed.finish));
    search.activities.forEach(({ demands }, activity) => {
      const units = at(demands, resource);
      if (units === 0) return;
      for (let day = at(placed.starts, activity); day < at(placed.finishes, activity); day++)
        if (placed.book.holds(activity, resource, day)) profile.add(day, units);
    });
    const { squares, hired, peak } = profile;
    return [id, { squares, hired, peak }] as const;
  });
  return Object.fromEntries(uses);
}

/** Flags of the days on which anything that uses a resource can work: weekends are no swing of a crew. */
export function usableDays(placed: Placed, resource: number, lastMoment: number): Uint8Array {
  const { search, activities } = placed.compiled;
  const users = activities.filter((_, i) => at(at(search.activities, i).demands, resource) > 0);
  const open = [...new Set(users.map(user => user.open.flags))];
  const isAlways = at(search.resources, resource).isHeldOnIdleDays === true;
  return Uint8Array.from({ length: lastMoment }, (_, day) =>
    isAlways || open.some(flags => flags[day] === 1) ? 1 : 0,
  );
}
