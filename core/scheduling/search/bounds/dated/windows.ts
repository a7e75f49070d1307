import { earliestFit } from '../../dated-fit';
import { finishOf, type DatedNet } from '../../dated-net';
import { demandedStart, heldUntil, type Times } from '../../dated-pass';
import { NONE } from '../../dice';
import type { Links } from '../../plain-net';
import { orderOf } from '../../tails';

/** One time direction of the windows: the earliest times there are the latest times of the other. */
export interface View {
  readonly net: DatedNet;
  /** A topological order of the minimum lags. */
  readonly order: Int32Array;
  /** Which activities the relationships may move when one has moved. */
  readonly heeders: Links;
  readonly times: Times;
  readonly parts: Parts;
  /** Those that have to be looked at again along the relationships, and beside the compulsory parts. */
  readonly isPushed: Uint8Array;
  readonly isMoved: Uint8Array;
}

/** What each activity holds in any case, and what that leaves of the capacities. */
export interface Parts {
  /** Activities that hold a capacity and are not fixed; bits for the words each activity holds. */
  readonly holders: Int32Array;
  readonly wordsOf: Int32Array;
  readonly free: Int32Array;
  /** What is taken off `free`: from and to, 0 and 0 for nothing. */
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** Between which moments each activity must lie, under the assumption that all ends by a given moment. */
export interface DatedWindows {
  readonly views: readonly [View, View];
  /** Those whose pairs have to be looked at again. */
  readonly isNarrowed: Uint8Array;
  /** How often a rule has moved a window. */
  moves: number;
}

export function windowsOf(nets: readonly [DatedNet, DatedNet]): DatedWindows {
  return {
    views: [viewOf(nets[0]), viewOf(nets[1])],
    isNarrowed: new Uint8Array(nets[0].count),
    moves: 0,
  };
}

function viewOf(net: DatedNet): View {
  const { count } = net;
  return {
    net,
    order: orderOf(count, net.predecessors, net.successors),
    heeders: heedersOf(net),
    times: { starts: new Int32Array(count), finishes: new Int32Array(count) },
    parts: partsOf(net),
    isPushed: new Uint8Array(count),
    isMoved: new Uint8Array(count),
  };
}

function partsOf({ count, uses, fixed, template }: DatedNet): Parts {
  const wordsOf = new Int32Array(count);
  const holders: number[] = [];
  for (let i = 0; i < count; i++) {
    for (let use = uses.first[i] ?? NONE; use < (uses.first[i + 1] ?? NONE); use++) {
      wordsOf[i] = (wordsOf[i] ?? NONE) | (1 << (uses.word[use] ?? NONE));
    }
    if (wordsOf[i] !== 0 && (fixed[i] ?? NONE) < 0) holders.push(i);
  }
  return {
    holders: Int32Array.from(holders),
    wordsOf,
    free: template.slice(),
    from: new Int32Array(count),
    to: new Int32Array(count),
  };
}

function heedersOf({ count, waits, lagged, pulls }: DatedNet): Links {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (const { first, other } of [waits, lagged, pulls]) {
    for (let i = 0; i < count; i++) {
      for (let arc = first[i] ?? NONE; arc < (first[i + 1] ?? NONE); arc++) {
        lists[other[arc] ?? NONE]?.push(i);
      }
    }
  }
  return linksOf(lists);
}

/** Lists of each activity one behind the other. */
export function linksOf(lists: readonly (readonly number[])[]): Links {
  const first = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => {
    first[i + 1] = (first[i] ?? NONE) + list.length;
  });
  return { first, list: Int32Array.from(lists.flat()) };
}

/** Opens the windows anew. @param end the moment of the forward axis by which all has to end. */
export function openWindows(windows: DatedWindows, end: number): void {
  const [forward, backward] = windows.views;
  const earliest = Math.max(0, backward.net.slots - end);
  for (let i = 0; i < forward.net.count; i++) {
    setStart(forward, i, Math.max(forward.net.base, forward.net.release[i] ?? NONE));
    setStart(backward, i, Math.max(earliest, backward.net.release[i] ?? NONE));
  }
  mark(windows, 1);
}

/** Marks every activity as one to be looked at by all rules (1), or by none (0). */
function mark({ views, isNarrowed }: DatedWindows, value: 0 | 1): void {
  isNarrowed.fill(value);
  for (const { isPushed, isMoved } of views) {
    isPushed.fill(value);
    isMoved.fill(value);
  }
}

function setStart({ net, times }: View, i: number, moment: number): void {
  const only = net.fixed[i] ?? NONE;
  const start = only >= 0 ? only : earliestFit(net, net.template, i, moment);
  times.starts[i] = start;
  const calendar = net.calendars[net.calendarOf[i] ?? NONE];
  times.finishes[i] = calendar ? finishOf(calendar, start, net.durations[i] ?? NONE) : start;
}

/** The latest start of an activity in one direction, from its earliest finish in the other. */
export function latestStart(other: View, i: number): number {
  return other.net.slots - (other.times.finishes[i] ?? NONE);
}

export function latestFinish(other: View, i: number): number {
  return other.net.slots - (other.times.starts[i] ?? NONE);
}

/** The windows as they stand, to come back to. */
export class Bookmark {
  private readonly windows: DatedWindows;
  private readonly kept: readonly Int32Array[];

  constructor(windows: DatedWindows) {
    this.windows = windows;
    this.kept = tablesOf(windows).map(table => table.slice());
  }

  /** Keeps the windows as they are now instead. */
  renew(): void {
    tablesOf(this.windows).forEach((table, t) => this.kept[t]?.set(table));
  }

  /** Puts the windows back as they were, settled. */
  comeBack(): void {
    tablesOf(this.windows).forEach((table, t) => {
      table.set(this.kept[t] ?? []);
    });
    mark(this.windows, 0);
  }
}

function tablesOf({ views }: DatedWindows): Int32Array[] {
  return views.flatMap(({ times }) => [times.starts, times.finishes]);
}

/** Moves the earliest start to the next one the activity can have; false when the window has become too short. */
export function startFrom(windows: DatedWindows, way: 0 | 1, i: number, moment: number): boolean {
  const view = windows.views[way];
  const other = windows.views[way === 0 ? 1 : 0];
  if (moment > (view.times.starts[i] ?? NONE)) {
    if ((view.net.fixed[i] ?? NONE) >= 0) return false;
    if (moment > view.net.slots) return false;
    setStart(view, i, moment);
    view.isMoved[i] = 1;
    windows.isNarrowed[i] = 1;
    const { first, list } = view.heeders;
    for (let k = first[i] ?? NONE, end = first[i + 1] ?? NONE; k < end; k++)
      view.isPushed[list[k] ?? NONE] = 1;
    windows.moves++;
  }
  return (view.times.starts[i] ?? NONE) <= latestStart(other, i);
}

/** Sweeps over maximum lags: what a cycle of lags moves further is left to later rounds. */
const MOST_SWEEPS = 5;

/** Pushes the windows along the relationships in one direction; false when one has become too short. */
export function alongRelationships(windows: DatedWindows, way: 0 | 1): boolean {
  const { net, order, times, isPushed } = windows.views[way];
  const sweeps = net.hasMaximums ? MOST_SWEEPS : 1;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const before = windows.moves;
    for (const i of order) {
      if (isPushed[i] === 0) continue;
      isPushed[i] = 0;
      const held = Math.max(heldUntil(net, i, times), net.hasMaximums ? pulledUntil(net, i, times) : 0);
      if (!startFrom(windows, way, i, held)) return false;
    }
    if (windows.moves === before) break;
  }
  return true;
}

function pulledUntil(net: DatedNet, i: number, times: Times): number {
  const { pulls } = net;
  let earliest = 0;
  for (let arc = pulls.first[i] ?? NONE; arc < (pulls.first[i + 1] ?? NONE); arc++) {
    earliest = Math.max(earliest, demandedStart(net, pulls, arc, pulls.other[arc] ?? NONE, i, times));
  }
  return earliest;
}
