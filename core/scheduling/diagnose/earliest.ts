import { at } from '../../base';
import type { SearchProblem } from '../search';
import { finishFrom, firstMomentBefore, leastMoment, NEVER, nextStart, startForFinish } from '../time';

/** The earliest starts by relationships, calendars and dates, resources left aside, and what sets each. */
export interface EarliestStarts {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
  /** The relationship that sets each start; -1 where none does. */
  readonly setBy: Int32Array;
  /** An activity that cannot be placed in the horizon: nothing after it is placed either. */
  readonly stuck?: number;
}

/**
 * Earliest starts by repeated correction, least and most lags alike: every activity starts no later in any schedule.
 * @source label-correcting longest paths, R. Bellman 1958; as a time analysis with least and most lags: M. Bartusch,
 * R. Moehring, F. Radermacher, Annals of Operations Research 16 (1988) 201-240.
 */
export function earliestStarts(problem: SearchProblem): EarliestStarts {
  const n = problem.activities.length;
  const starts = new Int32Array(n);
  const finishes = new Int32Array(n);
  const setBy = new Int32Array(n).fill(-1);
  const touching: number[][] = Array.from({ length: n }, () => []);
  problem.relationships.forEach((relationship, r) => {
    at(touching, relationship.from).push(r);
    if (relationship.maximumLag !== undefined) at(touching, relationship.to).push(r);
  });
  const queue: number[] = [];
  const settle = (activity: number, moment: number): boolean => {
    const start = nextStart(problem, activity, moment);
    const finish = start >= NEVER ? NEVER : finishFrom(problem, activity, start);
    starts[activity] = Math.min(start, NEVER);
    finishes[activity] = finish;
    queue.push(activity);
    return finish < NEVER;
  };
  for (let i = 0; i < n; i++) {
    if (!settle(i, at(problem.activities, i).notBefore ?? 0)) return { starts, finishes, setBy, stuck: i };
  }
  for (let head = 0; head < queue.length; head++) {
    const activity = at(queue, head);
    for (const r of at(touching, activity)) {
      const push = pushOf(problem, r, activity, starts, finishes);
      if (push.start <= at(starts, push.activity) || isFixed(problem, push.activity)) continue;
      setBy[push.activity] = r;
      if (!settle(push.activity, push.start)) return { starts, finishes, setBy, stuck: push.activity };
    }
  }
  return { starts, finishes, setBy };
}

/** The start a relationship forces on the activity at its other end. */
function pushOf(
  problem: SearchProblem,
  r: number,
  moved: number,
  starts: Int32Array,
  finishes: Int32Array,
): { activity: number; start: number } {
  const relationship = at(problem.relationships, r);
  const isForward = relationship.from === moved;
  const activity = isForward ? relationship.to : relationship.from;
  const [ownEnd, otherEnd] = isForward ? [0, 1] : [1, 0];
  const moment = at(relationship.kind[ownEnd] === 'F' ? finishes : starts, moved);
  const limit = isForward
    ? leastMoment(problem, relationship, moment)
    : firstMomentBefore(problem, relationship, moment);
  if (limit >= NEVER) return { activity, start: NEVER };
  return {
    activity,
    start: relationship.kind[otherEnd] === 'F' ? startForFinish(problem, activity, limit) : limit,
  };
}

function isFixed(problem: SearchProblem, activity: number): boolean {
  return at(problem.activities, activity).fixedStart !== undefined;
}
