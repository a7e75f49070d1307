import { intAt, valueAt } from '../../../../base';
import type { DatedNet } from '../../dated-net';
import { latestFinish, latestStart, startFrom, type DatedWindows } from './windows';

/** A resource with the activities that hold it, and the unit days it offers before each moment of both directions. */
export interface Supply {
  readonly users: Int32Array;
  readonly units: Int32Array;
  readonly before: readonly [Float64Array, Float64Array];
  /** What `before` is multiplied with. */
  readonly times: number;
}

/** The supply of each watched resource, on days on which any of its users can work. Exclusions are left to pairs. */
export function suppliesOf(net: DatedNet, horizon: number): Supply[] {
  const known = new Map<string, Supply['before']>();
  return net.watched.flatMap(({ units, peak, capacityByDay, isExclusion }) => {
    if (isExclusion) return [];
    const users = usersOf(net, units);
    const calendars = [...new Set(users.map(i => intAt(net.calendarOf, i)))].sort();
    const base = { users, units: users.map(i => intAt(units, i)) };
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
    const doesWork = intAt(units, i) * intAt(net.durations, i) > 0;
    if (doesWork && intAt(net.fixed, i) < 0) users.push(i);
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
    backward[moment] = sum - valueAt(forward, net.slots - moment);
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
  private readonly net: DatedNet;
  private readonly supply: Supply;
  private readonly lefts: Int32Array;
  private readonly rights: Int32Array;
  /** Where the table of each user's calendar begins. */
  private readonly bases: Int32Array;
  /** Work days of each user before its earliest start and finish and before its latest start. */
  private readonly earlyFrom: Int32Array;
  private readonly earlyTo: Int32Array;
  private readonly lateFrom: Int32Array;
  /** Latest start of each user, and the users by it. */
  private readonly latest: Int32Array;
  private readonly byLatest: Int32Array;
  /** Work days each user cannot avoid behind the left edge, wherever the right one is. */
  private readonly behind: Int32Array;
  /** Those of `byLatest` with work behind the left edge, and the most unit days of one from each place on. */
  private readonly waiting: Int32Array;
  private readonly mostFrom: Int32Array;
  /** Those with more and more work in front of the right edge as it moves on. */
  private readonly growing: Int32Array;

  constructor(windows: DatedWindows, way: 0 | 1, supply: Supply) {
    const { users } = supply;
    const { net, times } = windows.views[way];
    const other = windows.views[way === 0 ? 1 : 0];
    this.windows = windows;
    this.way = way;
    this.net = net;
    this.supply = supply;
    this.bases = new Int32Array(users.length);
    this.earlyFrom = new Int32Array(users.length);
    this.earlyTo = new Int32Array(users.length);
    this.lateFrom = new Int32Array(users.length);
    this.lefts = new Int32Array(users.length);
    this.rights = new Int32Array(users.length);
    this.latest = new Int32Array(users.length);
    this.behind = new Int32Array(users.length);
    this.waiting = new Int32Array(users.length);
    this.mostFrom = new Int32Array(users.length + 1);
    this.growing = new Int32Array(users.length);
    for (let u = 0; u < users.length; u++) {
      const i = intAt(users, u);
      const base = intAt(net.calendarOf, i) * (net.slots + 1);
      const start = intAt(times.starts, i);
      this.bases[u] = base;
      this.lefts[u] = start;
      this.rights[u] = latestFinish(other, i);
      this.earlyFrom[u] = intAt(net.indexOfDay, base + start);
      this.earlyTo[u] = intAt(net.indexOfDay, base + intAt(times.finishes, i));
      this.latest[u] = latestStart(other, i);
      this.lateFrom[u] = intAt(net.indexOfDay, base + intAt(this.latest, u));
    }
    this.byLatest = Int32Array.from(users.keys()).sort(
      (a, b) => intAt(this.latest, a) - intAt(this.latest, b),
    );
    this.lefts.sort();
    this.rights.sort();
  }

  fit(): boolean {
    const { lefts } = this;
    for (let a = 0; a < lefts.length; a++) {
      const left = intAt(lefts, a);
      if (left !== lefts[a - 1] && !this.fitsFrom(left)) return false;
    }
    return true;
  }

  /** Sorts out who has work behind a left edge; how many they are. */
  private standAt(left: number): number {
    const { bases, earlyTo, earlyFrom, behind, net, byLatest, waiting, mostFrom } = this;
    const { units } = this.supply;
    let count = 0;
    for (let k = 0; k < byLatest.length; k++) {
      const u = intAt(byLatest, k);
      const from = intAt(net.indexOfDay, intAt(bases, u) + left);
      const days = intAt(earlyTo, u) - Math.max(from, intAt(earlyFrom, u));
      behind[u] = Math.max(0, days);
      if (days > 0) waiting[count++] = u;
    }
    mostFrom[count] = 0;
    for (let k = count - 1; k >= 0; k--) {
      const u = intAt(waiting, k);
      mostFrom[k] = Math.max(intAt(mostFrom, k + 1), intAt(behind, u) * intAt(units, u));
    }
    return count;
  }

  /**
   * All intervals from one left edge. As the right edge moves on, the work of a user inside begins with its latest
   * start, grows, and then stays what lies behind the left edge: only those that grow are counted anew.
   */
  private fitsFrom(left: number): boolean {
    const { rights, waiting, growing, latest, behind, mostFrom } = this;
    const { units, before, times } = this.supply;
    const supplied = before[this.way];
    const count = this.standAt(left);
    const most = intAt(mostFrom, 0);
    let [begun, grown, settled] = [0, 0, 0];
    // All the work behind the left edge of those that grow.
    let coming = 0;
    for (let b = 0; b < rights.length; b++) {
      const right = intAt(rights, b);
      if (right <= left || right === rights[b - 1]) continue;
      while (begun < count && intAt(latest, intAt(waiting, begun)) < right) {
        const u = intAt(waiting, begun++);
        growing[grown++] = u;
        coming += intAt(behind, u) * intAt(units, u);
      }
      const offered = times * (valueAt(supplied, right) - valueAt(supplied, left)) - settled;
      // However much of it lies inside, there is room for it and for any one more.
      if (offered - coming >= most) continue;
      let work = 0;
      let largest = intAt(mostFrom, begun);
      for (let k = grown - 1; k >= 0; k--) {
        const u = intAt(growing, k);
        const days = this.least(u, left, right);
        const missing = intAt(behind, u) - days;
        if (missing > 0) {
          work += days * intAt(units, u);
          largest = Math.max(largest, missing * intAt(units, u));
        } else {
          settled += days * intAt(units, u);
          coming -= days * intAt(units, u);
          growing[k] = intAt(growing, --grown);
        }
      }
      const spare = times * (valueAt(supplied, right) - valueAt(supplied, left)) - settled - work;
      if (spare < 0) return false;
      if (largest > spare && !this.tighten(left, right, spare)) return false;
    }
    return true;
  }

  /** Work days that user `u` cannot avoid between the left edge and a moment. */
  private least(u: number, left: number, right: number): number {
    const behind = intAt(this.behind, u);
    if (behind === 0) return 0;
    const base = intAt(this.bases, u);
    const to = intAt(this.net.indexOfDay, base + right);
    const late = to - intAt(this.lateFrom, u);
    if (late <= 0) return 0;
    const inside = to - intAt(this.net.indexOfDay, base + left);
    return Math.min(behind, late, inside);
  }

  /** Moves activities that, started early, would bring more work into the interval than it has room for. */
  private tighten(left: number, right: number, spare: number): boolean {
    const { users, units } = this.supply;
    const { indexOfDay, dayOfIndex } = this.net;
    for (let u = 0; u < users.length; u++) {
      const base = intAt(this.bases, u);
      const held = intAt(units, u);
      const to = intAt(indexOfDay, base + right);
      const from = intAt(indexOfDay, base + left);
      const early = Math.min(intAt(this.earlyTo, u), to) - Math.max(intAt(this.earlyFrom, u), from);
      const days = Math.floor((spare + held * this.least(u, left, right)) / held);
      if (early <= days) continue;
      const start = intAt(dayOfIndex, base + to - days);
      if (!startFrom(this.windows, this.way, intAt(users, u), start)) return false;
    }
    return true;
  }
}
