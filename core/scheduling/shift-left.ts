import { at } from '../base';
import { earliestByRelationships } from './bounds';
import { move, type Placed } from './placed';
import { finishFrom, NEVER, nextStart } from './time';

/**
 * Moves every activity to the earliest place it fits while the others stay, in order of start, once.
 * Nothing gets later, so the finish stays or improves, and afterwards something holds every activity.
 */
export function shiftLeft(placed: Placed): void {
  const { search } = placed.compiled;
  const order = Array.from(placed.starts.keys()).sort(
    (a, b) => at(placed.starts, a) - at(placed.starts, b) || a - b,
  );
  for (const activity of order) {
    const { fixedStart, notBefore } = at(search.activities, activity);
    if (fixedStart !== undefined) continue;
    const now = at(placed.starts, activity);
    const from = Math.max(notBefore ?? 0, earliestByRelationships(placed, activity));
    if (nextStart(search, activity, from) >= now) continue;
    const before = at(placed.finishes, activity);
    placed.book.remove(activity);
    const start = earliestFit(placed, activity, from, now);
    move(placed, activity, start, start === now ? before : finishFrom(search, activity, start));
  }
}

/** The first start from a moment on at which an activity not in the book fits; `otherwise` if none comes before it. */
export function earliestFit(placed: Placed, activity: number, from: number, otherwise: number): number {
  const { search } = placed.compiled;
  let start = nextStart(search, activity, from);
  while (start < otherwise) {
    const finish = finishFrom(search, activity, start);
    if (finish >= NEVER) return otherwise;
    const blocked = placed.book.lastBlocked(activity, start, finish);
    if (blocked < 0) return start;
    start = nextStart(search, activity, blocked + 1);
  }
  return otherwise;
}
