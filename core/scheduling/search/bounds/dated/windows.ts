import { earliestFit } from '../../dated-fit';
import { finishOf, type DatedNet } from '../../dated-net';
import { demandedStart, heldUntil, type Times } from '../../dated-pass';
import { NONE } from '../../dice';
import { orderOf } from '../../tails';

/** One time direction of the windows: the earliest times there are the latest times of the other. */
export interface View {
  readonly net: DatedNet;
  /** A topological order of the minimum lags. */
  readonly order: Int32Array;
  readonly times: Times;
  /** Working memory: what is left of the capacities beside what is held in any case. */
  readonly free: Int32Array;
  /** Working memory: what each activity holds in any case, from and to, and its earliest start at that time. */
  readonly partFrom: Int32Array;
  readonly partTo: Int32Array;
  readonly partStarts: Int32Array;
  /** Whether beside those parts nothing had to move. */
  isSettled: boolean;
}

/** Between which moments each activity must lie, under the assumption that all ends by a given moment. */
export interface DatedWindows {
  readonly views: readonly [View, View];
  /** How often a rule has moved a window. */
  moves: number;
}

export function windowsOf(nets: readonly [DatedNet, DatedNet]): DatedWindows {
  return { views: [viewOf(nets[0]), viewOf(nets[1])], moves: 0 };
}

function viewOf(net: DatedNet): View {
  return {
    net,
    order: orderOf(net.count, net.predecessors, net.successors),
    times: { starts: new Int32Array(net.count), finishes: new Int32Array(net.count) },
    free: net.template.slice(),
    partFrom: new Int32Array(net.count),
    partTo: new Int32Array(net.count),
    partStarts: new Int32Array(net.count),
    isSettled: false,
  };
}

/** Opens the windows anew. @param end the moment of the forward axis by which all has to end. */
export function openWindows({ views }: DatedWindows, end: number): void {
  const [forward, backward] = views;
  const earliest = Math.max(0, backward.net.slots - end);
  for (let i = 0; i < forward.net.count; i++) {
    setStart(forward, i, Math.max(forward.net.base, forward.net.release[i] ?? NONE));
    setStart(backward, i, Math.max(earliest, backward.net.release[i] ?? NONE));
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

  comeBack(): void {
    tablesOf(this.windows).forEach((table, t) => {
      table.set(this.kept[t] ?? []);
    });
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
    windows.moves++;
  }
  return (view.times.starts[i] ?? NONE) <= latestStart(other, i);
}

/** Sweeps over maximum lags: what a cycle of lags moves further is left to later rounds. */
const MOST_SWEEPS = 5;

/** Pushes the windows along the relationships in one direction; false when one has become too short. */
export function alongRelationships(windows: DatedWindows, way: 0 | 1): boolean {
  const { net, order, times } = windows.views[way];
  const sweeps = net.hasMaximums ? MOST_SWEEPS : 1;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const before = windows.moves;
    for (const i of order) {
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
