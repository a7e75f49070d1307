import { at } from '../base';
import type { Placed } from './placed';
import {
  firstMomentBefore,
  lastMomentBefore,
  latestStart,
  leastMoment,
  mostMoment,
  NEVER,
  startForFinish,
} from './time';

/** The moment of an activity that one end of a relationship names. */
export function momentOf(placed: Placed, activity: number, end: string | undefined): number {
  return at(end === 'F' ? placed.finishes : placed.starts, activity);
}

/**
 * The earliest start the relationships leave an activity while all others stay where they are.
 * Both the least lags of those before it and the most lags of those after it hold it.
 */
export function earliestByRelationships(placed: Placed, activity: number): number {
  const problem = placed.compiled.search;
  let start = 0;
  for (const { relationship } of at(placed.into, activity)) {
    const moment = leastMoment(
      problem,
      relationship,
      momentOf(placed, relationship.from, relationship.kind[0]),
    );
    start = Math.max(
      start,
      relationship.kind[1] === 'S' ? moment : startForFinish(problem, activity, moment),
    );
  }
  for (const { relationship } of at(placed.outOf, activity)) {
    if (relationship.maximumLag === undefined) continue;
    const moment = firstMomentBefore(
      problem,
      relationship,
      momentOf(placed, relationship.to, relationship.kind[1]),
    );
    start = Math.max(
      start,
      relationship.kind[0] === 'S' ? moment : startForFinish(problem, activity, moment),
    );
  }
  return start;
}

/** The latest start the relationships, its deadline and a last moment leave an activity while others stay. */
export function latestByRelationships(placed: Placed, activity: number, lastMoment: number): number {
  const problem = placed.compiled.search;
  let finish = Math.min(lastMoment, at(problem.activities, activity).latestFinish ?? NEVER);
  let start = NEVER;
  const limit = (end: string | undefined, moment: number) => {
    if (end === 'S') start = Math.min(start, moment);
    else finish = Math.min(finish, moment);
  };
  for (const { relationship } of at(placed.outOf, activity)) {
    limit(
      relationship.kind[0],
      lastMomentBefore(problem, relationship, momentOf(placed, relationship.to, relationship.kind[1])),
    );
  }
  for (const { relationship } of at(placed.into, activity)) {
    if (relationship.maximumLag === undefined) continue;
    limit(
      relationship.kind[1],
      mostMoment(problem, relationship, momentOf(placed, relationship.from, relationship.kind[0])),
    );
  }
  return Math.min(start, latestStart(problem, activity, finish));
}
