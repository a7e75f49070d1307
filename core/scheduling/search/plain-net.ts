import { intAt } from '../../base';

/** The relationships of one time direction, as lists in one array: those of `i` from `first[i]` to `first[i + 1]`. */
export interface Links {
  readonly first: Int32Array;
  readonly list: Int32Array;
}

/** A network of finish-to-start relationships without lag, constant capacities and no calendars. */
export interface PlainNet {
  readonly count: number;
  readonly durations: Int32Array;
  readonly predecessors: Links;
  readonly successors: Links;
  /** Packed words a day slot. */
  readonly words: number;
  /** Packed demand, `words` entries an activity. */
  readonly demands: Int32Array;
  /** What a free day holds: capacity and guard bits, one entry a word. */
  readonly freeDay: Int32Array;
  readonly guards: Int32Array;
  /** Day slots the profiles need: all work in a row. */
  readonly slots: number;
  /** Least time between the start of the project and the start, between the finish and the end of the project. */
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  /** Work of an activity per day, as a share of the capacities; for comparing schedules of equal finish. */
  readonly weights: Float64Array;
}

/** Turns pairs into lists: of each `from` its `to`s. */
export function linksOf(count: number, pairs: readonly (readonly [number, number])[]): Links {
  const first = new Int32Array(count + 1);
  for (const [from] of pairs) first[from + 1] = intAt(first, from + 1) + 1;
  for (let i = 0; i < count; i++) first[i + 1] = intAt(first, i + 1) + intAt(first, i);
  const next = first.slice();
  const list = new Int32Array(pairs.length);
  for (const [from, to] of pairs) {
    const place = intAt(next, from);
    list[place] = to;
    next[from] = place + 1;
  }
  return { first, list };
}

/** The same network with time running backwards. */
export function reversedNet(net: PlainNet): PlainNet {
  const { predecessors, successors, heads, tails } = net;
  return { ...net, predecessors: successors, successors: predecessors, heads: tails, tails: heads };
}
