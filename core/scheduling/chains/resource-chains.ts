import { at } from '../../base';
import type { SearchExclusion, SearchProblem } from '../search';

/** The one activity starts after the other has finished. */
export type Arc = readonly [from: number, to: number];

/**
 * The order in which crews, places and exclusions pass from one activity to the next in a schedule, as arcs: whoever
 * takes units waits for those who held them in the plan. Whatever the durations, a schedule that keeps the arcs never
 * takes more units than there are. Units pass first from a holder the activity already follows, so few arcs are new.
 * @returns undefined where the plan shares units inside an activity's idle days, or the units change by date: chains
 * cannot say that.
 * @source N. Policella, S. Smith, A. Cesta, A. Oddi, Generating robust schedules through temporal flexibility,
 *   ICAPS 2004 (chaining of resources).
 */
export function resourceChains(
  problem: SearchProblem,
  starts: Int32Array,
  finishes: Int32Array,
): Arc[] | undefined {
  const order = [...starts.keys()].sort(
    (a, b) => at(starts, a) - at(starts, b) || at(finishes, a) - at(finishes, b),
  );
  const arcs = new Set<number>();
  const count = starts.length;
  const follows = new Set(
    problem.relationships.flatMap(({ from, to, kind, minimumLag = -1 }) =>
      // With an overlap the one may start before the other has finished.
      kind === 'FS' && minimumLag >= 0 ? [from * count + to] : [],
    ),
  );
  const add = (from: number, to: number) => {
    if (!follows.has(from * count + to)) arcs.add(from * count + to);
  };
  for (const [resource, { capacity, capacityByDay }] of problem.resources.entries()) {
    if (capacityByDay !== undefined) return undefined;
    const links = chainOf(problem, resource, capacity, order, starts, finishes, follows);
    if (links === undefined) return undefined;
    for (const [from, to] of links) add(from, to);
  }
  for (const [a, b] of problem.exclusions.flatMap(pairsOf)) {
    const [first, second] = at(finishes, a) <= at(starts, b) ? [a, b] : [b, a];
    if (at(finishes, first) > at(starts, second)) return undefined;
    add(first, second);
  }
  return [...arcs].map(arc => [Math.floor(arc / count), arc % count]);
}

/** Units free again, and who held them last; nobody at first. */
interface Holding {
  readonly holder: number;
  readonly free: number;
  units: number;
}

function chainOf(
  problem: SearchProblem,
  resource: number,
  capacity: number,
  order: readonly number[],
  starts: Int32Array,
  finishes: Int32Array,
  follows: ReadonlySet<number>,
): Arc[] | undefined {
  const arcs: Arc[] = [];
  let pool: Holding[] = [{ holder: -1, free: 0, units: capacity }];
  for (const activity of order) {
    let wanted = at(at(problem.activities, activity).demands, resource);
    if (wanted === 0 || at(starts, activity) === at(finishes, activity)) continue;
    const taken = wanted;
    const isKnown = (h: Holding) => h.holder < 0 || follows.has(h.holder * starts.length + activity);
    const free = pool
      .filter(h => h.free <= at(starts, activity))
      .sort((a, b) => Number(isKnown(b)) - Number(isKnown(a)) || b.free - a.free);
    for (const holding of free) {
      if (wanted === 0) break;
      const units = Math.min(wanted, holding.units);
      holding.units -= units;
      wanted -= units;
      if (holding.holder >= 0) arcs.push([holding.holder, activity]);
    }
    if (wanted > 0) return undefined;
    pool = pool.filter(h => h.units > 0);
    pool.push({ holder: activity, free: at(finishes, activity), units: taken });
  }
  return arcs;
}

/** All that an exclusion keeps apart, two by two. */
function pairsOf({ first, second }: SearchExclusion): Arc[] {
  return first.flatMap(a => second.flatMap((b): Arc[] => (a === b ? [] : [[a, b]])));
}
