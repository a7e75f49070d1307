import { BugError, topologicalOrder, type Finding } from '../base';
import { clockOf, type Clock } from './clock';
import type { Network, NetworkActivity, RelationshipKind } from './model';

/** A network by positions, in an order in which every activity follows those it waits for. */
export interface Graph {
  readonly activities: readonly NetworkActivity[];
  readonly clocks: readonly Clock[];
  readonly order: readonly number[];
  readonly into: readonly (readonly Edge[])[];
  readonly outOf: readonly (readonly Edge[])[];
}

export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly kind: RelationshipKind;
  readonly lag: number;
}

/** The graph of a network, or what is wrong with it: unknown ids, durations below 0, a loop. */
export function graphOf(network: Network): { readonly graph?: Graph; readonly findings: readonly Finding[] } {
  const position = new Map(network.activities.map((activity, i) => [activity.id, i]));
  const findings: Finding[] = network.activities.flatMap(durationFinding);
  const edges = network.relationships.flatMap(({ from, to, kind, lag = 0 }, i) => {
    const [a, b] = [position.get(from), position.get(to)];
    if (a !== undefined && b !== undefined && Number.isFinite(lag)) return [{ from: a, to: b, kind, lag }];
    findings.push(relationshipFinding(i, a === undefined ? from : to, lag));
    return [];
  });
  const sorted = topologicalOrder(
    network.activities.length,
    edges.map(edge => [edge.from, edge.to] as const),
  );
  if ('loop' in sorted) findings.push(loopFinding(network, sorted.loop));
  if (findings.length > 0 || 'loop' in sorted) return { findings };
  const into: Edge[][] = network.activities.map(() => []);
  const outOf: Edge[][] = network.activities.map(() => []);
  for (const edge of edges) {
    into[edge.to]?.push(edge);
    outOf[edge.from]?.push(edge);
  }
  const clocks = network.activities.map(clockOf);
  return { graph: { activities: network.activities, clocks, order: sorted.order, into, outOf }, findings };
}

/** The entry of a list that must have it. */
export function entry<T>(list: ArrayLike<T>, index: number): T {
  const found = list[index];
  if (found === undefined) throw new BugError(`no entry ${index} in a list of ${list.length}`);
  return found;
}

function durationFinding({ id, title, duration, calendar }: NetworkActivity): Finding[] {
  const isGood = Number.isFinite(duration) && duration >= 0 && (!calendar || Number.isInteger(duration));
  if (isGood) return [];
  return [
    {
      code: 'network/duration',
      weight: 'blocks',
      place: `/activities/${id}`,
      message: `${title} has a duration of ${duration} days.`,
      meaning: 'No dates can be found for it or for what follows it.',
      remedy: calendar ? 'Give whole work days, 0 or more.' : 'Give days, 0 or more.',
    },
  ];
}

function relationshipFinding(index: number, id: string, lag: number): Finding {
  return {
    code: 'network/relationship',
    weight: 'blocks',
    place: `/relationships/${index}`,
    message: Number.isFinite(lag) ? `There is no activity "${id}".` : `A lag of ${lag} days.`,
    meaning: 'No dates can be found while a relationship leads nowhere.',
    remedy: 'Name two activities and a number of days.',
  };
}

function loopFinding(network: Network, loop: readonly number[]): Finding {
  const titles = loop.map(i => entry(network.activities, i).title);
  return {
    code: 'network/loop',
    weight: 'blocks',
    place: `/activities/${entry(network.activities, entry(loop, 0)).id}`,
    message: `Each of these waits for the one before it, and the first for the last: ${titles.join(', ')}.`,
    meaning: 'No dates can be found for them or for what follows them.',
    remedy: 'Take out one of the relationships between them.',
  };
}
