import { at, intAt, topologicalOrder, valueAt } from '../../base';
import type { Compiled } from '../compile/compiled';
import type { SearchProblem, SearchRelationship } from '../search';
import { leastMoment, NEVER } from '../time';
import { nodeOf, type Node } from './node';
import type { Arc } from './resource-chains';

/** Days or moments of one activity, one value a trial. */
export type Trials = Float64Array;

/** What an activity waits for beyond its calendar. */
export interface Gate {
  /** Called before the trials of a pass. */
  begin(): void;
  /** The day it may start, not before the earliest; NaN when there is none. */
  startOf(trial: number, earliest: number): number;
}

/** The dates of some trials at once, by activity and then by trial. */
export interface PassTrials {
  readonly n: number;
  /** Whole days, not negative; a trial with NaN has no finish. */
  readonly days: readonly Trials[];
  readonly starts: readonly Trials[];
  readonly finishes: readonly Trials[];
  /** By activity: what it waits for. */
  readonly gates: ReadonlyMap<number, Gate>;
  /** Whether the dates of an activity stand already, as far as nothing it depends on is calculated anew. */
  readonly stands: (activity: number) => boolean;
}

/** One forward pass over relationships and chains: the earliest dates that keep the order of the plan. */
export interface ChainPass {
  /** Activities in the order they are passed. */
  readonly nodes: readonly Node[];
  /** Fills starts and finishes, activity by activity, all trials of each. */
  run(trials: PassTrials): void;
}

/** @returns undefined when relationships and chains run in a circle. */
export function chainPass(compiled: Compiled, chains: readonly Arc[]): ChainPass | undefined {
  const { search } = compiled;
  const count = search.activities.length;
  const pairs = [...search.relationships.map(r => [r.from, r.to] as const), ...chains];
  const sorted = topologicalOrder(count, pairs);
  if (!('order' in sorted)) return undefined;
  const nodes = sorted.order.map(activity => nodeOf(compiled, activity, chains));
  const isNew = new Uint8Array(count);
  return {
    nodes,
    run(trials) {
      for (const node of nodes) {
        const i = node.activity;
        const isLed = node.after.some(p => isNew[p] === 1) || node.lagged.some(r => isNew[r.from] === 1);
        isNew[i] = isLed || !trials.stands(i) ? 1 : 0;
        if (isNew[i] === 1) passNode(search, node, trials);
      }
    },
  };
}

function passNode(search: SearchProblem, node: Node, trials: PassTrials): void {
  const { n, days, starts, finishes, gates } = trials;
  const { activity } = node;
  const [start, finish, lasting] = [at(starts, activity), at(finishes, activity), at(days, activity)];
  if (node.fixedStart >= 0) start.fill(node.fixedStart, 0, n);
  else {
    start.fill(node.notBefore, 0, n);
    for (const p of node.after) raise(start, at(finishes, p), n);
    for (const r of node.lagged) raiseByLag(search, node, r, trials);
    const gate = gates.get(node.activity);
    if (gate !== undefined) waitFor(gate, node, start, lasting, n);
    else settleStarts(node, start, lasting, n);
  }
  fillFinishes(node, start, lasting, finish, n);
}

function raise(start: Trials, least: Trials, n: number): void {
  for (let t = 0; t < n; t++) {
    const moment = valueAt(least, t);
    if (moment > valueAt(start, t)) start[t] = moment;
  }
}

function raiseByLag(
  search: SearchProblem,
  node: Node,
  r: SearchRelationship,
  { n, days, starts, finishes }: PassTrials,
): void {
  const from = at(r.kind === 'FS' || r.kind === 'FF' ? finishes : starts, r.from);
  const [start, lasting] = [at(starts, node.activity), at(days, node.activity)];
  const isOfStart = r.kind === 'FS' || r.kind === 'SS';
  for (let t = 0; t < n; t++) {
    const before = valueAt(from, t);
    if (before >= NEVER) {
      start[t] = NEVER;
      continue;
    }
    const moment = leastMoment(search, r, before);
    const least = isOfStart ? moment : finishStart(node, moment, valueAt(lasting, t));
    if (least > valueAt(start, t)) start[t] = least;
  }
}

/** The first days on which the activities may start by calendar, season and days on end. */
function settleStarts(node: Node, start: Trials, lasting: Trials, n: number): void {
  const { indexOfDay, dayOfIndex, openRun } = node;
  if (indexOfDay !== undefined)
    for (let t = 0; t < n; t++)
      if (valueAt(lasting, t) > 0) start[t] = dayOfIndex[indexOfDay[valueAt(start, t)] ?? -1] ?? NEVER;
  if (openRun !== undefined)
    for (let t = 0; t < n; t++) start[t] = openFrom(openRun, valueAt(start, t), valueAt(lasting, t));
}

/** The first start at or after a moment that the activity's own rules allow. */
function ownStart({ indexOfDay, dayOfIndex, openRun }: Node, moment: number, duration: number): number {
  const start =
    indexOfDay !== undefined && duration > 0 ? (dayOfIndex[indexOfDay[moment] ?? -1] ?? NEVER) : moment;
  return openRun === undefined ? start : openFrom(openRun, start, duration);
}

function openFrom(openRun: Int32Array, moment: number, duration: number): number {
  const needed = Math.max(1, duration);
  let start = moment;
  while (start < openRun.length && intAt(openRun, start) < needed) start++;
  return start >= openRun.length ? NEVER : start;
}

/** An activity tries so often at most: what it waits for and its own rules must agree on a day. */
const MOST_TRIES = 60;

function waitFor(gate: Gate, node: Node, start: Trials, lasting: Trials, n: number): void {
  gate.begin();
  for (let t = 0; t < n; t++) {
    const duration = valueAt(lasting, t);
    let moment = ownStart(node, valueAt(start, t), duration);
    let tries = 0;
    for (; tries < MOST_TRIES && moment < NEVER; tries++) {
      const window = gate.startOf(t, moment);
      if (window === moment) break;
      moment = Number.isNaN(window) ? NEVER : ownStart(node, window, duration);
    }
    start[t] = tries < MOST_TRIES ? moment : NEVER;
  }
}

/** The first start from which an activity does not finish before a moment. */
function finishStart({ indexOfDay, dayOfIndex }: Node, moment: number, duration: number): number {
  if (moment <= 0) return 0;
  if (indexOfDay === undefined || duration === 0) return Math.max(0, moment - duration);
  const index = indexOfDay[moment] ?? 0;
  const last = index > 0 && dayOfIndex[index - 1] === moment - 1 ? index - 1 : index;
  return dayOfIndex[Math.max(0, last - duration + 1)] ?? NEVER;
}

function fillFinishes(node: Node, start: Trials, lasting: Trials, finish: Trials, n: number): void {
  const { indexOfDay, dayOfIndex } = node;
  for (let t = 0; t < n; t++) {
    const from = valueAt(start, t);
    const duration = valueAt(lasting, t);
    if (from >= NEVER) finish[t] = NEVER;
    else if (indexOfDay === undefined || duration === 0) finish[t] = from + duration;
    else finish[t] = (dayOfIndex[(indexOfDay[from] ?? -1) + duration - 1] ?? NEVER - 1) + 1;
  }
}
