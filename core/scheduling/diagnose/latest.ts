import { at, topologicalOrder } from '../../base';
import type { SearchProblem } from '../search';
import { finishFrom, lastMomentBefore, latestStart, NEVER } from '../time';

/**
 * The latest finishes that deadlines leave, resources left aside; {@link NEVER} where no deadline reaches.
 * @returns undefined when the relationships have a loop.
 */
export function latestFinishes(problem: SearchProblem): Int32Array | undefined {
  const n = problem.activities.length;
  const sorted = topologicalOrder(
    n,
    problem.relationships.map(r => [r.from, r.to] as const),
  );
  if ('loop' in sorted) return undefined;
  const outOf: number[][] = Array.from({ length: n }, () => []);
  problem.relationships.forEach((relationship, r) => at(outOf, relationship.from).push(r));
  const finishes = Int32Array.from(problem.activities, activity => activity.latestFinish ?? NEVER);
  for (const activity of sorted.order.toReversed()) {
    for (const r of at(outOf, activity)) {
      const finish = finishBefore(problem, r, finishes);
      if (finish < at(finishes, activity)) finishes[activity] = finish;
    }
  }
  return finishes;
}

/** The latest finish one relationship leaves the activity it starts from. */
function finishBefore(problem: SearchProblem, r: number, finishes: Int32Array): number {
  const relationship = at(problem.relationships, r);
  const last = at(finishes, relationship.to);
  if (last >= NEVER) return NEVER;
  const moment = relationship.kind[1] === 'F' ? last : latestStart(problem, relationship.to, last);
  const named = lastMomentBefore(problem, relationship, moment);
  if (relationship.kind[0] === 'F' || named < 0 || named >= problem.horizon) return Math.max(named, -1);
  return Math.min(NEVER, finishFrom(problem, relationship.from, named));
}
