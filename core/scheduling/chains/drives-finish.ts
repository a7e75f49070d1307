import { at, byteAt, valueAt } from '../../base';
import type { Compiled } from '../compile/compiled';
import { leastMoment, NEVER } from '../time';
import type { Trials } from './chain-pass';
import type { Node } from './node';

/**
 * Marks the activities that drive the finish, trial by trial: those that finish last, and backwards whatever the start
 * of a marked one had to wait for longest.
 * @param nodes in the order of the forward pass. @param marks by activity, filled with 1 or 0.
 */
export function markDriving(
  { search }: Compiled,
  nodes: readonly Node[],
  dates: { readonly n: number; readonly starts: readonly Trials[]; readonly finishes: readonly Trials[] },
  finish: Trials,
  marks: readonly Uint8Array[],
): void {
  const { n, finishes } = dates;
  const work = { search, ...dates, marks, latest: new Float64Array(n), moments: new Float64Array(n) };
  nodes.forEach(({ activity }) => at(marks, activity).fill(0));
  for (let place = nodes.length - 1; place >= 0; place--) {
    const node = at(nodes, place);
    const own = at(finishes, node.activity);
    const mark = at(marks, node.activity);
    if (markLast(mark, own, finish, n) && node.fixedStart < 0) markLeading(work, node, mark);
  }
}

interface Work {
  readonly search: Compiled['search'];
  readonly n: number;
  readonly starts: readonly Trials[];
  readonly finishes: readonly Trials[];
  readonly marks: readonly Uint8Array[];
  /** Moments by trial: the latest that a node waited for, and those of one relationship. */
  readonly latest: Trials;
  readonly moments: Trials;
}

/** Marks the trials in which an activity finishes last. @returns whether it is marked in any. */
function markLast(mark: Uint8Array, own: Trials, finish: Trials, n: number): boolean {
  let marked = 0;
  for (let t = 0; t < n; t++) {
    if (own[t] === finish[t]) mark[t] = 1;
    marked |= byteAt(mark, t);
  }
  return marked === 1;
}

/** Marks what the start of a marked activity had to wait for longest. */
function markLeading(work: Work, node: Node, mark: Uint8Array): void {
  const { n, finishes, marks, latest, moments } = work;
  latest.fill(node.notBefore, 0, n);
  for (const p of node.after) raise(latest, at(finishes, p), n);
  for (const r of node.lagged) {
    fillMoments(work, node, r);
    raise(latest, moments, n);
  }
  // What begins with the project waits for nobody; a first day of its own holds it beside those who end just then.
  for (let t = 0; t < n; t++) {
    const moment = valueAt(latest, t);
    if (moment < node.notBefore || moment <= 0) latest[t] = Number.NaN;
  }
  for (const p of node.after) markEqual(at(marks, p), mark, at(finishes, p), latest, n);
  for (const r of node.lagged) {
    fillMoments(work, node, r);
    markEqual(at(marks, r.from), mark, moments, latest, n);
  }
}

function raise(latest: Trials, moments: Trials, n: number): void {
  for (let t = 0; t < n; t++) latest[t] = Math.max(valueAt(latest, t), valueAt(moments, t));
}

/** Marks an activity where the one that waited for it is marked and nothing held that one longer. */
function markEqual(out: Uint8Array, mark: Uint8Array, moments: Trials, latest: Trials, n: number): void {
  for (let t = 0; t < n; t++) if (mark[t] === 1 && moments[t] === latest[t]) out[t] = 1;
}

/** The moments to which a relationship holds the start of an activity. */
function fillMoments({ search, n, starts, finishes, moments }: Work, node: Node, r: Node['lagged'][number]) {
  const from = at(r.kind === 'FS' || r.kind === 'FF' ? finishes : starts, r.from);
  const [begun, done] = [at(starts, node.activity), at(finishes, node.activity)];
  const isOfStart = r.kind === 'FS' || r.kind === 'SS';
  for (let t = 0; t < n; t++) {
    const before = valueAt(from, t);
    const lasting = isOfStart ? 0 : valueAt(done, t) - valueAt(begun, t);
    moments[t] = before >= NEVER ? 0 : leastMoment(search, r, before) - lasting;
  }
}
