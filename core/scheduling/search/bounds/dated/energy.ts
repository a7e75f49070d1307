import type { Watched } from '../../compile-held';
import type { DatedNet } from '../../dated-net';
import { NONE } from '../../dice';
import { latestFinish, latestStart, startFrom, type DatedWindows } from './windows';

/** A resource with the activities that hold it, and the unit days it offers before each moment of both directions. */
export interface Supply {
  readonly users: Int32Array;
  readonly units: Int32Array;
  readonly before: readonly [Float64Array, Float64Array];
  /** What `before` is multiplied with. */
  readonly times: number;
}

/** The supply of each watched resource, on days on which any of its users can work. */
export function suppliesOf(net: DatedNet, watched: readonly Watched[], horizon: number): Supply[] {
  const known = new Map<string, Supply['before']>();
  return watched.map(({ units, peak, capacityByDay }) => {
    const users = usersOf(net, units);
    const calendars = [...new Set(users.map(i => net.calendarOf[i] ?? NONE))].sort();
    const base = { users, units: users.map(i => units[i] ?? NONE) };
    if (capacityByDay) {
      const varying = { capacityByDay, peak, horizon };
      return { ...base, before: offeredBefore(net, calendars, varying), times: 1 };
    }
    const key = calendars.join();
    const before = known.get(key) ?? offeredBefore(net, calendars, null);
    known.set(key, before);
    return { ...base, before, times: peak };
  });
}

function usersOf(net: DatedNet, units: Int32Array): Int32Array {
  const users: number[] = [];
  for (let i = 0; i < net.count; i++) {
    const doesWork = (units[i] ?? NONE) * (net.durations[i] ?? NONE) > 0;
    if (doesWork && (net.fixed[i] ?? NONE) < 0) users.push(i);
  }
  return Int32Array.from(users);
}

interface Varying {
  readonly capacityByDay: ArrayLike<number>;
  readonly peak: number;
  readonly horizon: number;
}

/** Open days, or unit days of a varying capacity, before each moment of both directions. */
function offeredBefore(
  net: DatedNet,
  calendars: readonly number[],
  varying: Varying | null,
): readonly [Float64Array, Float64Array] {
  const tables = calendars.flatMap(c => net.calendars[c]?.indexOfDay ?? []);
  const forward = new Float64Array(net.slots + 1);
  const backward = new Float64Array(net.slots + 1);
  let sum = 0;
  for (let day = 0; day < net.slots; day++) {
    const own = day - net.base;
    const units = varying
      ? own < varying.horizon
        ? (varying.capacityByDay[own] ?? varying.peak)
        : varying.peak
      : 1;
    if (tables.some(index => index[day] !== index[day + 1])) sum += units;
    forward[day + 1] = sum;
  }
  for (let moment = 0; moment <= net.slots; moment++) {
    backward[moment] = sum - (forward[net.slots - moment] ?? NONE);
  }
  return [forward, backward];
}

/**
 * Energetic reasoning in work days: in every interval the work that must lie inside it, with each activity pushed
 * as far out as its window allows, may not exceed what is offered. Intervals that are nearly full also move the
 * activities that would not fit pushed in.
 * @source Baptiste, Le Pape and Nuijten, Annals of Operations Research 92 (1999) 305-333.
 */
export function withinSupply(windows: DatedWindows, way: 0 | 1, supplies: readonly Supply[]): boolean {
  return supplies.every(supply => new Intervals(windows, way, supply).fit());
}

/** The intervals of one resource, with the work of each user counted in the days of its own calendar. */
class Intervals {
  private readonly windows: DatedWindows;
  private readonly way: 0 | 1;
  private readonly supply: Supply;
  private readonly lefts: Int32Array;
  private readonly rights: Int32Array;

  constructor(windows: DatedWindows, way: 0 | 1, supply: Supply) {
    this.windows = windows;
    this.way = way;
    this.supply = supply;
    const other = windows.views[way === 0 ? 1 : 0];
    const { starts } = windows.views[way].times;
    this.lefts = supply.users.map(i => starts[i] ?? NONE).sort();
    this.rights = supply.users.map(i => latestFinish(other, i)).sort();
  }

  fit(): boolean {
    const { lefts, rights } = this;
    const before = this.supply.before[this.way];
    for (let a = 0; a < lefts.length; a++) {
      const left = lefts[a] ?? NONE;
      if (left === lefts[a - 1]) continue;
      for (let b = 0; b < rights.length; b++) {
        const right = rights[b] ?? NONE;
        if (right <= left || right === rights[b - 1]) continue;
        const offered = this.supply.times * ((before[right] ?? NONE) - (before[left] ?? NONE));
        const spare = offered - this.workWithin(left, right);
        if (spare < 0) return false;
        if (!this.tighten(left, right, spare)) return false;
      }
    }
    return true;
  }

  /** Work days that activity `i` cannot avoid between two moments. */
  private least(i: number, left: number, right: number): number {
    const view = this.windows.views[this.way];
    const other = this.windows.views[this.way === 0 ? 1 : 0];
    const { net, times } = view;
    const base = (net.calendarOf[i] ?? NONE) * (net.slots + 1);
    const index = net.indexOfDay;
    const from = index[base + left] ?? NONE;
    const to = index[base + right] ?? NONE;
    const early = (index[base + (times.finishes[i] ?? NONE)] ?? NONE) - from;
    const late = to - (index[base + latestStart(other, i)] ?? NONE);
    return Math.max(0, Math.min(net.durations[i] ?? NONE, early, late, to - from));
  }

  private workWithin(left: number, right: number): number {
    const { users, units } = this.supply;
    let work = 0;
    for (let u = 0; u < users.length; u++) {
      work += (units[u] ?? NONE) * this.least(users[u] ?? NONE, left, right);
    }
    return work;
  }

  /** Moves activities that, started early, would bring more work into the interval than it has room for. */
  private tighten(left: number, right: number, spare: number): boolean {
    const { users, units } = this.supply;
    const { net, times } = this.windows.views[this.way];
    for (let u = 0; u < users.length; u++) {
      const i = users[u] ?? NONE;
      const held = units[u] ?? NONE;
      if (held * (net.durations[i] ?? NONE) <= spare) continue;
      const base = (net.calendarOf[i] ?? NONE) * (net.slots + 1);
      const to = net.indexOfDay[base + right] ?? NONE;
      const from = net.indexOfDay[base + left] ?? NONE;
      const start = net.indexOfDay[base + (times.starts[i] ?? NONE)] ?? NONE;
      const finish = net.indexOfDay[base + (times.finishes[i] ?? NONE)] ?? NONE;
      const early = Math.min(finish, to) - Math.max(start, from);
      const days = Math.floor((spare + held * this.least(i, left, right)) / held);
      if (early <= days) continue;
      if (!startFrom(this.windows, this.way, i, net.dayOfIndex[base + to - days] ?? NONE)) return false;
    }
    return true;
  }
}
