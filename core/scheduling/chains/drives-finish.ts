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
  const { n, starts, finishes } = dates;
  nodes.forEach(({ activity }) => marks[activity]?.fill(0));
  for (let place = nodes.length - 1; place >= 0; place--) {
    const node = nodes[place];
    const own = node && finishes[node.activity];
    const mark = node && marks[node.activity];
    if (node === undefined || own === undefined || mark === undefined) continue;
    for (let t = 0; t < n; t++) if (own[t] === finish[t]) mark[t] = 1;
    if (node.fixedStart >= 0) continue;
    for (let t = 0; t < n; t++) if (mark[t] === 1) markLeading(node, t);
  }

  function markLeading(node: Node, t: number): void {
    let latest = node.notBefore;
    for (const p of node.after) latest = Math.max(latest, finishes[p]?.[t] ?? 0);
    for (const r of node.lagged) latest = Math.max(latest, startBy(node, r, t));
    if (latest <= node.notBefore) return;
    for (const p of node.after) if (finishes[p]?.[t] === latest) mark(p, t);
    for (const r of node.lagged) if (startBy(node, r, t) === latest) mark(r.from, t);
  }

  function startBy(node: Node, r: Node['lagged'][number], t: number): number {
    const from = (r.kind === 'FS' || r.kind === 'FF' ? finishes : starts)[r.from]?.[t] ?? NEVER;
    if (from >= NEVER) return 0;
    const moment = leastMoment(search, r, from);
    if (r.kind === 'FS' || r.kind === 'SS') return moment;
    const lasting = (finishes[node.activity]?.[t] ?? 0) - (starts[node.activity]?.[t] ?? 0);
    return moment - lasting;
  }

  function mark(activity: number, t: number): void {
    const column = marks[activity];
    if (column !== undefined) column[t] = 1;
  }
}
