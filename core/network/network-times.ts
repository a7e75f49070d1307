import type { Finding } from '../base';
import { entry, graphOf, type Graph } from './graph';
import type { ActivityTimes, Network } from './model';
import { backwardPass, forwardPass, startAllowedBy, type Times } from './passes';

/** Floats closer to 0 than this many days count as none: rounding of fractional durations. */
const FLOAT_TOLERANCE = 1e-9;

export interface NetworkResult {
  /** Absent when findings keep the network from being computed. */
  readonly activities?: readonly ActivityTimes[];
  /** The earliest moment by which all is finished. */
  readonly finish?: number;
  readonly hammocks?: readonly { readonly id: string; readonly start: number; readonly finish: number }[];
  readonly findings: readonly Finding[];
}

/**
 * Early and late times, total and free float of a network, resources left aside.
 * @param from the moment from which work may start: 0 in plain time, a day number with calendars.
 * @returns findings instead of times for an unknown activity, a negative duration or a loop.
 */
export function networkTimes(network: Network, from = 0): NetworkResult {
  const { graph, findings } = graphOf(network);
  if (!graph) return { findings };
  const early = forwardPass(graph, from);
  const finish = early.finishes.reduce((a, b) => Math.max(a, b), from);
  const until = network.finishBy ?? finish;
  const late = backwardPass(graph, until);
  const activities = graph.activities.map((_, i) => timesOf(graph, i, early, late, finish));
  return { activities, finish, hammocks: hammockSpans(network, graph, early), findings };
}

function timesOf(graph: Graph, i: number, early: Times, late: Times, finish: number): ActivityTimes {
  const clock = entry(graph.clocks, i);
  const totalFloat = clock.between(entry(early.starts, i), entry(late.starts, i));
  return {
    id: entry(graph.activities, i).id,
    earlyStart: entry(early.starts, i),
    earlyFinish: entry(early.finishes, i),
    lateStart: entry(late.starts, i),
    lateFinish: entry(late.finishes, i),
    totalFloat,
    freeFloat: freeFloat(graph, i, early, finish),
    critical: totalFloat <= FLOAT_TOLERANCE,
  };
}

/** How much later an activity can be while all that wait for it stay early. */
function freeFloat(graph: Graph, i: number, early: Times, finish: number): number {
  const clock = entry(graph.clocks, i);
  let room = Math.max(0, clock.between(entry(early.finishes, i), finish));
  for (const edge of entry(graph.outOf, i)) {
    const allowed = startAllowedBy(graph, edge, early);
    room = Math.min(room, entry(graph.clocks, edge.to).between(allowed, entry(early.starts, edge.to)));
  }
  return Math.max(0, room);
}

function hammockSpans(
  network: Network,
  graph: Graph,
  early: Times,
): { id: string; start: number; finish: number }[] {
  const position = new Map(graph.activities.map((activity, i) => [activity.id, i]));
  const momentsOf = (ids: readonly string[], of: Float64Array) =>
    ids.flatMap(id => {
      const i = position.get(id);
      return i === undefined ? [] : [entry(of, i)];
    });
  return (network.hammocks ?? []).flatMap(({ id, fromStartOf, toFinishOf }) => {
    const starts = momentsOf(fromStartOf, early.starts);
    const finishes = momentsOf(toFinishOf, early.finishes);
    if (starts.length === 0 || finishes.length === 0) return [];
    return [{ id, start: Math.min(...starts), finish: Math.max(...finishes) }];
  });
}
