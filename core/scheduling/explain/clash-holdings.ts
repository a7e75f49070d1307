import { isoOf } from '../../calendar';
import { at } from '../../base';
import type { Clash } from '../day-book';
import type { Placed } from '../placed';
import type { Holding } from '../result';
import type { UnderWay } from './under-way';

/** A clash in the words of the problem: the resource and who holds it, the zone, or the exclusion. */
export function clashHoldings(placed: Placed, days: UnderWay, activity: number, clash: Clash): Holding[] {
  const { compiled } = placed;
  if (clash.kind === 'exclusion') {
    const other = at(compiled.problem.activities, clash.other).id;
    return [{ kind: 'exclusion', exclusion: at(compiled.exclusions, clash.exclusion), activity: other }];
  }
  const { resource, day } = clash;
  const activities = holdersOn(placed, days[day] ?? [], activity, resource, day).map(
    i => at(compiled.problem.activities, i).id,
  );
  const origin = at(compiled.resources, resource);
  if ('zone' in origin) return [{ kind: 'crew-limit', zone: origin.zone, activities }];
  const demand = at(at(compiled.search.activities, activity).demands, resource);
  const isShort = demand > placed.book.capacity(resource, day);
  if (isShort) return [{ kind: 'capacity', resource: origin.resource, date: isoOf(compiled.first + day) }];
  return [{ kind: 'resource', resource: origin.resource, activities }];
}

/** The other activities that hold a resource on a day, of those under way. */
function holdersOn(
  placed: Placed,
  candidates: readonly number[],
  activity: number,
  resource: number,
  day: number,
): number[] {
  const { search } = placed.compiled;
  return candidates.filter(
    i =>
      i !== activity &&
      at(at(search.activities, i).demands, resource) > 0 &&
      placed.book.holds(i, resource, day),
  );
}
