import { intAt, at } from '../../../base';
import { linksOf, type Links } from '../plain-net';
import type { SearchProblem } from '../problem';
import { orderOf } from '../tails';

/** A plain network as the bounds read it: demands resource by resource, and the longest paths around each activity. */
export interface BoundNet {
  readonly count: number;
  readonly durations: Int32Array;
  readonly predecessors: Links;
  readonly successors: Links;
  /** A topological order. */
  readonly order: Int32Array;
  readonly capacities: readonly number[];
  /** `demands[r][i]`: units of resource r that activity i holds. */
  readonly demands: readonly Int32Array[];
  /** Earliest start and, behind the finish, the longest path to the end. */
  readonly heads: Int32Array;
  readonly tails: Int32Array;
}

/** Prepares a plain problem without loops for the bounds. */
export function boundNetOf(problem: SearchProblem): BoundNet {
  const count = problem.activities.length;
  const pairs = problem.relationships.map(link => [link.from, link.to] as const);
  const successors = linksOf(count, pairs);
  const predecessors = linksOf(
    count,
    pairs.map(([from, to]) => [to, from] as const),
  );
  const durations = Int32Array.from(problem.activities, activity => activity.duration);
  const order = orderOf(count, predecessors, successors);
  return {
    count,
    durations,
    predecessors,
    successors,
    order,
    capacities: problem.resources.map(resource => resource.capacity),
    demands: problem.resources.map((_, r) => Int32Array.from(problem.activities, a => at(a.demands, r))),
    heads: pathsBefore(order, predecessors, durations),
    tails: pathsBefore(order.slice().reverse(), successors, durations),
  };
}

/** The longest path before each activity, along `order`. */
function pathsBefore(order: Int32Array, before: Links, durations: Int32Array): Int32Array {
  const paths = new Int32Array(order.length);
  for (const activity of order) {
    let longest = 0;
    for (let p = intAt(before.first, activity); p < intAt(before.first, activity + 1); p++) {
      const other = intAt(before.list, p);
      longest = Math.max(longest, intAt(paths, other) + intAt(durations, other));
    }
    paths[activity] = longest;
  }
  return paths;
}

/** The longest path through the network. */
export function criticalPath(net: BoundNet): number {
  let longest = 0;
  for (let i = 0; i < net.count; i++) {
    longest = Math.max(longest, intAt(net.heads, i) + intAt(net.durations, i) + intAt(net.tails, i));
  }
  return longest;
}
