import { entry, type Edge, type Graph } from './graph';

/** Starts and finishes by position. */
export interface Times {
  readonly starts: Float64Array;
  readonly finishes: Float64Array;
}

/**
 * The forward pass: every activity as early as those it waits for allow, from a moment on.
 * @source US Navy, Builder 3 & 2 Volume 1, NAVEDTRA 14043/14233, network scheduling: earliest finish plus lag is the
 * earliest start of what follows.
 */
export function forwardPass(graph: Graph, from: number): Times {
  const times = emptyTimes(graph);
  for (const i of graph.order) {
    const { duration, notBefore = from } = entry(graph.activities, i);
    const clock = entry(graph.clocks, i);
    let start = Math.max(from, notBefore);
    for (const edge of entry(graph.into, i)) start = Math.max(start, startAllowedBy(graph, edge, times));
    times.starts[i] = duration === 0 ? start : clock.startFrom(start);
    times.finishes[i] = clock.finishOf(entry(times.starts, i), duration);
  }
  return times;
}

/** The backward pass: every activity as late as those that wait for it allow, up to a moment. */
export function backwardPass(graph: Graph, until: number): Times {
  const times = emptyTimes(graph);
  for (const i of graph.order.toReversed()) {
    const { duration } = entry(graph.activities, i);
    const clock = entry(graph.clocks, i);
    let finish = until;
    for (const edge of entry(graph.outOf, i)) finish = Math.min(finish, finishAllowedBy(graph, edge, times));
    times.finishes[i] = duration === 0 ? finish : clock.finishBefore(finish);
    times.starts[i] = clock.startOf(entry(times.finishes, i), duration);
  }
  return times;
}

/** The earliest start one relationship leaves the activity that waits. */
export function startAllowedBy(graph: Graph, edge: Edge, times: Times): number {
  const clock = entry(graph.clocks, edge.to);
  const moment = entry(edge.kind[0] === 'F' ? times.finishes : times.starts, edge.from);
  const named = clock.later(moment, edge.lag);
  if (edge.kind[1] === 'S') return named;
  const { duration } = entry(graph.activities, edge.to);
  // A finish inside idle days is reached with the next work day.
  const last = duration === 0 ? named : clock.finishOf(clock.startFrom(named - 1), 1);
  return clock.startOf(last, duration);
}

/** The latest finish one relationship leaves the activity that is waited for. */
function finishAllowedBy(graph: Graph, edge: Edge, times: Times): number {
  const moment = entry(edge.kind[1] === 'S' ? times.starts : times.finishes, edge.to);
  const named = entry(graph.clocks, edge.to).earlier(moment, edge.lag);
  if (edge.kind[0] === 'F') return named;
  const clock = entry(graph.clocks, edge.from);
  const { duration } = entry(graph.activities, edge.from);
  const start = duration === 0 ? named : clock.startOf(clock.finishBefore(named + 1), 1);
  return clock.finishOf(start, duration);
}

function emptyTimes(graph: Graph): Times {
  const count = graph.activities.length;
  return { starts: new Float64Array(count), finishes: new Float64Array(count) };
}
