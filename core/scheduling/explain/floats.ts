import { at } from '../../base';
import { latestByRelationships } from '../bounds';
import { move, placeAll, type Placed } from '../placed';
import { finishFrom, latestStart, previousStart } from '../time';

/** Latest starts under the resources, and the latest starts while nothing else moves; by packed position. */
export interface LatestStarts {
  readonly total: Int32Array;
  readonly free: Int32Array;
}

/**
 * Floats that hold under resources. Total: going back from the last finish, every activity is moved as late as it
 * fits beside all others, those after it already moved; the outcome is itself a schedule that keeps every rule and
 * the same finish, so every float can really be used. Free: as late as it fits while nothing else moves.
 * @source V. Valls, F. Ballestin, S. Quintanilla, Justification and RCPSP, EJOR 165 (2005) 375-386.
 */
export function latestStarts(placed: Placed): LatestStarts {
  const free = placed.starts.map((_, i) => latestWhileOthersStay(placed, i, true));
  const late = placeAll(placed.compiled, placed.starts, placed.finishes);
  const order = Array.from(late.finishes.keys()).sort(
    (a, b) => at(late.finishes, b) - at(late.finishes, a) || at(late.starts, b) - at(late.starts, a) || b - a,
  );
  for (const activity of topologicalBackwards(placed, order)) {
    const start = latestWhileOthersStay(late, activity, false);
    if (start > at(late.starts, activity))
      move(late, activity, start, finishFrom(late.compiled.search, activity, start));
  }
  return { total: late.starts, free };
}

/** The order, with every activity after all that follow it: ties of milestones come right. */
function topologicalBackwards(placed: Placed, order: readonly number[]): number[] {
  const done = new Uint8Array(order.length);
  const result: number[] = [];
  for (const first of order) {
    const stack = [first];
    for (let activity = stack.at(-1); activity !== undefined; activity = stack.at(-1)) {
      const waiting = at(placed.outOf, activity).find(
        link => done[link.relationship.to] === 0 && !stack.includes(link.relationship.to),
      );
      if (waiting) stack.push(waiting.relationship.to);
      else {
        stack.pop();
        if (done[activity] === 0) result.push(activity);
        done[activity] = 1;
      }
    }
  }
  return result;
}

function latestWhileOthersStay(placed: Placed, activity: number, isWithoutGap: boolean): number {
  const { search } = placed.compiled;
  const { fixedStart } = at(search.activities, activity);
  const now = at(placed.starts, activity);
  if (fixedStart !== undefined) return now;
  const limit = previousStart(search, activity, latestByRelationships(placed, activity, placed.finish));
  if (limit <= now) return now;
  if (!placed.book.canClash(activity)) return limit;
  if (isWithoutGap) return lastFitWithoutGap(placed, activity, now, limit);
  const finish = at(placed.finishes, activity);
  placed.book.remove(activity);
  const start = lastFit(placed, activity, now, limit);
  placed.book.place(activity, now, finish);
  return start;
}

function lastFit(placed: Placed, activity: number, now: number, limit: number): number {
  const { search } = placed.compiled;
  for (let start = limit; start > now;) {
    const finish = finishFrom(search, activity, start);
    const blocked = placed.book.firstBlocked(activity, start, finish);
    if (blocked < 0) return start;
    start = Math.min(previousStart(search, activity, start - 1), latestStart(search, activity, blocked));
  }
  return now;
}

/** Going later day by day, an activity only meets days behind its present finish: the first without room stops it. */
function lastFitWithoutGap(placed: Placed, activity: number, now: number, limit: number): number {
  const { search } = placed.compiled;
  const finish = finishFrom(search, activity, now);
  const blocked = placed.book.firstBlocked(activity, finish, finishFrom(search, activity, limit));
  return blocked < 0 ? limit : Math.max(now, latestStart(search, activity, blocked));
}
