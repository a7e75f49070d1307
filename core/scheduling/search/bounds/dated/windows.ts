import { intAt, at } from '../../../../base';
import { earliestFit } from '../../dated-fit';
import { finishOf, type DatedNet } from '../../dated-net';
import { demandedStart, heldUntil, type Times } from '../../dated-pass';
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
  /** Those that no capacity ever keeps from a start that their calendar and their allowed starts let them have. */
  readonly isUnheld: Uint8Array;
  /** Those that have to be looked at again along the relationships, and beside the compulsory parts. */
  readonly isPushed: Uint8Array;
  readonly isMoved: Uint8Array;
  /** Whether there may be any of those, and how often windows had moved when the parts were last brought in line. */
  hasPushed: boolean;
  hasMoved: boolean;
  inLineAt: number;
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
  hasNarrowed: boolean;
  /** How often a rule has moved a window. */
  moves: number;
}

export function windowsOf(nets: readonly [DatedNet, DatedNet]): DatedWindows {
  return {
    views: [viewOf(nets[0]), viewOf(nets[1])],
    isNarrowed: new Uint8Array(nets[0].count),
    hasNarrowed: false,
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
    isUnheld: unheldOf(net),
    isPushed: new Uint8Array(count),
    isMoved: new Uint8Array(count),
    hasPushed: false,
    hasMoved: false,
    inLineAt: -1,
  };
}

/** With the same capacities on every day these are the activities that have room on the first. */
function unheldOf({ count, uses, guards, template, slots, watched, fixed }: DatedNet): Uint8Array {
  const isUnheld = new Uint8Array(count);
  if (watched.some(({ capacityByDay }) => capacityByDay !== null) || fixed.some(start => start >= 0))
    return isUnheld;
  isUnheld.fill(1);
  for (let i = 0; i < count; i++) {
    for (let use = intAt(uses.first, i); use < intAt(uses.first, i + 1); use++) {
      const word = intAt(uses.word, use);
      const guard = intAt(guards, word);
      const units = intAt(template, word * slots);
      const most = Math.max(intAt(uses.work, use), intAt(uses.idle, use));
      if (((units - most) & guard) !== guard) isUnheld[i] = 0;
    }
  }
  return isUnheld;
}

function partsOf({ count, uses, fixed, template }: DatedNet): Parts {
  const wordsOf = new Int32Array(count);
  const holders: number[] = [];
  for (let i = 0; i < count; i++) {
    for (let use = intAt(uses.first, i); use < intAt(uses.first, i + 1); use++) {
      wordsOf[i] = intAt(wordsOf, i) | (1 << intAt(uses.word, use));
    }
    if (wordsOf[i] !== 0 && intAt(fixed, i) < 0) holders.push(i);
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
      for (let arc = intAt(first, i); arc < intAt(first, i + 1); arc++) {
        lists[intAt(other, arc)]?.push(i);
      }
    }
  }
  return linksOf(lists);
}

/** Lists of each activity one behind the other. */
export function linksOf(lists: readonly (readonly number[])[]): Links {
  const first = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => {
    first[i + 1] = intAt(first, i) + list.length;
  });
  return { first, list: Int32Array.from(lists.flat()) };
}

/** Opens the windows anew. @param end the moment of the forward axis by which all has to end. */
export function openWindows(windows: DatedWindows, end: number): void {
  const [forward, backward] = windows.views;
  const earliest = Math.max(0, backward.net.slots - end);
  for (let i = 0; i < forward.net.count; i++) {
    setStart(forward, i, Math.max(forward.net.base, intAt(forward.net.release, i)));
    setStart(backward, i, Math.max(earliest, intAt(backward.net.release, i)));
  }
  mark(windows, 1);
  forward.inLineAt = -1;
  backward.inLineAt = -1;
}

/** Marks every activity as one to be looked at by all rules (1), or by none (0). */
function mark(windows: DatedWindows, value: 0 | 1): void {
  windows.isNarrowed.fill(value);
  windows.hasNarrowed = value === 1;
  for (const view of windows.views) {
    view.isPushed.fill(value);
    view.isMoved.fill(value);
    view.hasPushed = value === 1;
    view.hasMoved = value === 1;
  }
}

function setStart({ net, times, isUnheld }: View, i: number, moment: number): void {
  const only = intAt(net.fixed, i);
  const start =
    only >= 0
      ? only
      : isUnheld[i] === 1
        ? startByCalendar(net, i, moment)
        : earliestFit(net, net.template, i, moment);
  times.starts[i] = start;
  const calendar = net.calendars[intAt(net.calendarOf, i)];
  times.finishes[i] = calendar ? finishOf(calendar, start, intAt(net.durations, i)) : start;
}

/** The first start at or after a moment that calendar and allowed starts let it have; the end of the axis without one. */
function startByCalendar(net: DatedNet, i: number, moment: number): number {
  const next = net.nextStart[i];
  const start = next ? intAt(next, moment) : Math.min(moment, net.slots);
  const duration = intAt(net.durations, i);
  if (duration === 0 || start === net.slots) return start;
  const base = intAt(net.calendarOf, i) * (net.slots + 1);
  const index = intAt(net.indexOfDay, base + start);
  if (index + duration > intAt(net.indexOfDay, base + net.slots)) return net.slots;
  return intAt(net.dayOfIndex, base + index);
}

/** The latest start of an activity in one direction, from its earliest finish in the other. */
export function latestStart(other: View, i: number): number {
  return other.net.slots - intAt(other.times.finishes, i);
}

export function latestFinish(other: View, i: number): number {
  return other.net.slots - intAt(other.times.starts, i);
}

/** The windows as they stand, to come back to. */
export class Bookmark {
  private readonly windows: DatedWindows;
  private readonly tables: readonly Int32Array[];
  private readonly kept: readonly Int32Array[];

  constructor(windows: DatedWindows) {
    this.windows = windows;
    this.tables = windows.views.flatMap(({ times }) => [times.starts, times.finishes]);
    this.kept = this.tables.map(table => table.slice());
  }

  /** Keeps the windows as they are now instead. */
  renew(): void {
    this.tables.forEach((table, t) => this.kept[t]?.set(table));
  }

  /** Puts the windows back as they were, settled. */
  comeBack(): void {
    this.tables.forEach((table, t) => {
      table.set(at(this.kept, t));
    });
    mark(this.windows, 0);
  }
}

/** Moves the earliest start to the next one the activity can have; false when the window has become too short. */
export function startFrom(windows: DatedWindows, way: 0 | 1, i: number, moment: number): boolean {
  const view = windows.views[way];
  const other = windows.views[way === 0 ? 1 : 0];
  if (moment > intAt(view.times.starts, i)) {
    if (intAt(view.net.fixed, i) >= 0) return false;
    if (moment > view.net.slots) return false;
    setStart(view, i, moment);
    view.isMoved[i] = 1;
    view.hasMoved = true;
    windows.isNarrowed[i] = 1;
    windows.hasNarrowed = true;
    const { first, list } = view.heeders;
    for (let k = intAt(first, i), end = intAt(first, i + 1); k < end; k++) {
      view.isPushed[intAt(list, k)] = 1;
      view.hasPushed = true;
    }
    windows.moves++;
  }
  return intAt(view.times.starts, i) <= latestStart(other, i);
}

/** Sweeps over maximum lags: what a cycle of lags moves further is left to later rounds. */
const MOST_SWEEPS = 5;

/** Pushes the windows along the relationships in one direction; false when one has become too short. */
export function alongRelationships(windows: DatedWindows, way: 0 | 1): boolean {
  const view = windows.views[way];
  const { net, order, times, isPushed } = view;
  const sweeps = net.hasMaximums ? MOST_SWEEPS : 1;
  for (let sweep = 0; sweep < sweeps && view.hasPushed; sweep++) {
    const before = windows.moves;
    view.hasPushed = false;
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
  for (let arc = intAt(pulls.first, i); arc < intAt(pulls.first, i + 1); arc++) {
    earliest = Math.max(earliest, demandedStart(net, pulls, arc, intAt(pulls.other, arc), i, times));
  }
  return earliest;
}
