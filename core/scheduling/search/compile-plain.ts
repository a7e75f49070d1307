import { at } from '../../base';
import { layLanes, packUnits } from './lanes';
import { leastAfter } from './least-after';
import { linksOf, type PlainNet } from './plain-net';
import type { SearchProblem } from './problem';
import { weightsOf } from './weights';

/** Whether the problem is plain: constant capacities, no calendars, dates or lags. */
export function isPlain(problem: SearchProblem): boolean {
  return (
    problem.exclusions.length === 0 &&
    problem.resources.every(resource => resource.capacityByDay === undefined) &&
    problem.relationships.every(
      link => link.kind === 'FS' && link.minimumLag === 0 && link.maximumLag === undefined,
    ) &&
    problem.activities.every(
      activity =>
        activity.calendar === undefined &&
        activity.notBefore === undefined &&
        activity.latestFinish === undefined &&
        activity.fixedStart === undefined &&
        activity.startAllowed === undefined,
    )
  );
}

/** The plain network of a plain problem without loops, whose demands fit the capacities. */
export function plainNetOf(problem: SearchProblem): PlainNet {
  const count = problem.activities.length;
  const capacities = problem.resources.map(resource => resource.capacity);
  const lanes = layLanes(capacities);
  const demands = new Int32Array(count * lanes.words);
  problem.activities.forEach((activity, i) => {
    demands.set(packUnits(lanes, activity.demands), i * lanes.words);
  });
  const freeDay = packUnits(lanes, capacities).map((units, word) => units | at(lanes.guards, word));
  const pairs = problem.relationships.map(link => [link.from, link.to] as const);
  const durations = Int32Array.from(problem.activities, activity => activity.duration);
  const successors = linksOf(count, pairs);
  const predecessors = linksOf(
    count,
    pairs.map(([from, to]) => [to, from] as const),
  );
  return {
    count,
    durations,
    predecessors,
    successors,
    heads: leastAfter(problem, successors, predecessors),
    tails: leastAfter(problem, predecessors, successors),
    words: lanes.words,
    demands,
    freeDay,
    guards: lanes.guards,
    slots: durations.reduce((sum, duration) => sum + duration, 0),
    weights: weightsOf(problem),
  };
}
