import { topologicalOrder } from '../../base';
import { at } from '../compile/at';
import type { Compiled } from '../compile/compiled';
import type { SearchProblem, SearchRelationship } from '../search';
import { leastMoment, NEVER } from '../time';
import type { Arc } from './resource-chains';

/** One forward pass over relationships and chains: the earliest dates that keep the order of the plan. */
export interface ChainPass {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
  /** Place of each activity in the order of the pass. */
  readonly placeOf: Int32Array;
  /**
   * @param durations whole days by activity; @param notBefore moments, 0 without.
   * @param from the first place whose activity has other figures than in the pass before; 0 for all.
   * @returns the last finish.
   */
  run(durations: Int32Array, notBefore: Int32Array, from: number): number;
}

/** What the pass knows of one activity, in the order it is passed. */
interface Node {
  readonly activity: number;
  /** Activities it starts after, by finish to start without a lag. */
  readonly after: Int32Array;
  readonly lagged: readonly SearchRelationship[];
  readonly fixedStart: number;
  readonly notBefore: number;
  readonly indexOfDay: Int32Array | undefined;
  readonly dayOfIndex: Int32Array;
  /** Open days on end from each day on, for activities that need them; moments allowed, for milestones. */
  readonly openRun: Int32Array | undefined;
}

/** @returns undefined when relationships and chains run in a circle. */
export function chainPass(compiled: Compiled, chains: readonly Arc[]): ChainPass | undefined {
  const { search } = compiled;
  const count = search.activities.length;
  const pairs = [...search.relationships.map(r => [r.from, r.to] as const), ...chains];
  const sorted = topologicalOrder(count, pairs);
  if (!('order' in sorted)) return undefined;
  const nodes = sorted.order.map(activity => nodeOf(compiled, activity, chains));
  const [starts, finishes] = [new Int32Array(count), new Int32Array(count)];
  const placeOf = new Int32Array(count);
  nodes.forEach((node, place) => (placeOf[node.activity] = place));
  return {
    starts,
    finishes,
    placeOf,
    run(durations, notBefore, from) {
      for (let place = from; place < nodes.length; place++) {
        const node = nodes[place];
        if (node === undefined) break;
        const i = node.activity;
        const duration = durations[i] ?? 0;
        const start = startOf(search, node, duration, notBefore[i] ?? 0, starts, finishes);
        const finish = finishOf(node, start, duration);
        starts[i] = start;
        finishes[i] = finish;
      }
      let last = 0;
      for (let i = 0; i < count; i++) {
        const finish = finishes[i] ?? NEVER;
        if (finish > last) last = finish;
      }
      return last >= NEVER ? Number.NaN : last;
    },
  };
}

function nodeOf({ search, activities }: Compiled, activity: number, chains: readonly Arc[]): Node {
  const { calendar, fixedStart, notBefore, startAllowed } = at(search.activities, activity);
  const into = search.relationships.filter(r => r.to === activity);
  const isPlain = (r: SearchRelationship) => r.kind === 'FS' && r.minimumLag === 0;
  const table = calendar === undefined ? undefined : search.calendars[calendar];
  const flags = activities[activity]?.isMilestone === true ? startAllowed : activities[activity]?.open.flags;
  return {
    activity,
    after: Int32Array.from([
      ...new Set([
        ...into.filter(isPlain).map(r => r.from),
        ...chains.flatMap(([from, to]) => (to === activity ? [from] : [])),
      ]),
    ]),
    lagged: into.filter(r => !isPlain(r)),
    fixedStart: fixedStart ?? -1,
    notBefore: notBefore ?? 0,
    indexOfDay: table?.indexOfDay,
    dayOfIndex: table?.dayOfIndex ?? new Int32Array(0),
    openRun: startAllowed === undefined || flags === undefined ? undefined : openRuns(flags),
  };
}

/** Open days on end from each day on. */
export function openRuns(flags: Uint8Array): Int32Array {
  const runs = new Int32Array(flags.length);
  for (let day = flags.length - 1, run = 0; day >= 0; day--) {
    run = flags[day] === 1 ? run + 1 : 0;
    runs[day] = run;
  }
  return runs;
}

function startOf(
  problem: SearchProblem,
  node: Node,
  duration: number,
  heldBack: number,
  starts: Int32Array,
  finishes: Int32Array,
): number {
  if (node.fixedStart >= 0) return node.fixedStart;
  const { after, lagged, indexOfDay, dayOfIndex, openRun } = node;
  let start = Math.max(node.notBefore, heldBack);
  for (let k = 0; k < after.length; k++) {
    const finish = finishes[after[k] ?? 0] ?? 0;
    if (finish > start) start = finish;
  }
  for (const r of lagged) {
    const from = (r.kind === 'FS' || r.kind === 'FF' ? finishes : starts)[r.from] ?? 0;
    const moment = leastMoment(problem, r, from);
    const least = r.kind === 'FS' || r.kind === 'SS' ? moment : finishStart(node, moment, duration);
    if (least > start) start = least;
  }
  if (indexOfDay !== undefined && duration > 0)
    start = dayOfIndex[indexOfDay[start] ?? dayOfIndex.length] ?? NEVER;
  if (openRun !== undefined) {
    const needed = Math.max(1, duration);
    while (start < openRun.length && (openRun[start] ?? 0) < needed) start++;
    if (start >= openRun.length) return NEVER;
  }
  return start;
}

/** The first start from which an activity does not finish before a moment. */
function finishStart({ indexOfDay, dayOfIndex }: Node, moment: number, duration: number): number {
  if (moment <= 0) return 0;
  if (indexOfDay === undefined || duration === 0) return Math.max(0, moment - duration);
  const index = indexOfDay[moment] ?? 0;
  const last = index > 0 && dayOfIndex[index - 1] === moment - 1 ? index - 1 : index;
  return dayOfIndex[Math.max(0, last - duration + 1)] ?? NEVER;
}

function finishOf({ indexOfDay, dayOfIndex }: Node, start: number, duration: number): number {
  if (start >= NEVER) return NEVER;
  if (indexOfDay === undefined || duration === 0) return start + duration;
  const last = dayOfIndex[(indexOfDay[start] ?? 0) + duration - 1];
  return last === undefined ? NEVER : last + 1;
}
