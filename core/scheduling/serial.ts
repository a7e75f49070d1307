import { randomStream, topologicalOrder } from '../base';
import { at } from './compile/at';
import { DayBook } from './day-book';
import type { SearchOptions, SearchProblem, SearchResult } from './search';
import { finishFrom, leastMoment, NEVER, nextStart, startForFinish } from './time';

/** Places activities one after the other at the earliest day they fit, in several random orders. */
export function serialSearch(problem: SearchProblem, options: SearchOptions): SearchResult {
  const random = randomStream(options.seed, 'serial');
  let best: { starts: Int32Array; finishes: Int32Array; finish: number } | undefined;
  for (let n = 0; n < Math.min(options.schedules, 30); n++) {
    const made = serialSchedule(problem, orderOf(problem, n === 0 ? () => 0 : random));
    if (made && (!best || made.finish < best.finish)) best = made;
  }
  const lowerBound = 0;
  if (!best) return { status: 'unknown', lowerBound, schedules: options.schedules };
  return { status: 'feasible', lowerBound, schedules: options.schedules, ...best };
}

function orderOf(problem: SearchProblem, random: () => number): readonly number[] {
  const n = problem.activities.length;
  const shuffled = Array.from({ length: n }, (_, i) => ({ i, key: random() })).sort(
    (a, b) => a.key - b.key || a.i - b.i,
  );
  const rank = new Map(shuffled.map(({ i }, r) => [i, r]));
  const pairs = problem.relationships.map(r => [rank.get(r.from) ?? 0, rank.get(r.to) ?? 0] as const);
  const sorted = topologicalOrder(n, pairs);
  return 'order' in sorted ? sorted.order.map(r => at(shuffled, r).i) : [];
}

function serialSchedule(problem: SearchProblem, order: readonly number[]) {
  const n = problem.activities.length;
  const starts = new Int32Array(n).fill(-1);
  const finishes = new Int32Array(n).fill(-1);
  const book = new DayBook(problem);
  const incoming = problem.activities.map((_, i) => problem.relationships.filter(r => r.to === i));
  problem.activities.forEach((activity, i) => {
    if (activity.fixedStart !== undefined)
      book.place(i, activity.fixedStart, activity.fixedStart + activity.duration);
  });
  for (const i of order) {
    const activity = at(problem.activities, i);
    let start = activity.notBefore ?? 0;
    for (const r of at(incoming, i)) {
      const moment = leastMoment(problem, r, r.kind[0] === 'F' ? at(finishes, r.from) : at(starts, r.from));
      start = Math.max(start, r.kind[1] === 'S' ? moment : startForFinish(problem, i, moment));
    }
    if (activity.fixedStart !== undefined) start = activity.fixedStart;
    for (start = nextStart(problem, i, start); ; start = nextStart(problem, i, start + 1)) {
      if (start >= NEVER) return undefined;
      const finish = finishFrom(problem, i, start);
      if (finish >= NEVER || finish > (activity.latestFinish ?? NEVER)) return undefined;
      if (activity.fixedStart === undefined) {
        if (book.clash(i, start, finish)) continue;
        book.place(i, start, finish);
      }
      starts[i] = start;
      finishes[i] = finish;
      break;
    }
  }
  return order.length < n ? undefined : { starts, finishes, finish: Math.max(0, ...finishes) };
}
