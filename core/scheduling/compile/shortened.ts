import type { SearchActivity, SearchResource, WorkDays } from '../search';
import { at } from '../../base';
import type { Compiled } from './compiled';

/**
 * The same problem laid out for fewer days: the tables are cut off, nothing is worked out again.
 * @param horizon days to keep, at most those laid out.
 */
export function shortened(compiled: Compiled, horizon: number): Compiled {
  const { search } = compiled;
  const cut = cutter(horizon);
  return {
    ...compiled,
    search: {
      ...search,
      horizon,
      activities: search.activities.map((activity): SearchActivity =>
        activity.startAllowed === undefined
          ? activity
          : { ...activity, startAllowed: cut(activity.startAllowed) },
      ),
      resources: search.resources.map((resource): SearchResource =>
        resource.capacityByDay === undefined
          ? resource
          : { ...resource, capacityByDay: Int32Array.from(resource.capacityByDay).subarray(0, horizon) },
      ),
      calendars: search.calendars.map(({ indexOfDay, dayOfIndex }): WorkDays => ({
        indexOfDay: indexOfDay.subarray(0, horizon + 1),
        dayOfIndex: dayOfIndex.subarray(0, at(indexOfDay, horizon)),
      })),
    },
  };
}

/** Cuts lists of days, each list once: activities that share one share what is left of it. */
function cutter(horizon: number): (days: Uint8Array) => Uint8Array {
  const known = new Map<Uint8Array, Uint8Array>();
  return days => {
    const cut = known.get(days) ?? days.subarray(0, horizon);
    known.set(days, cut);
    return cut;
  };
}
