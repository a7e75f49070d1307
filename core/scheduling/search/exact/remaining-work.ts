import type { BoundNet } from '../bounds/bound-net';
import { NONE } from '../dice';

/**
 * Whether the work that is left fits: in every interval from now on, what runs already and what must lie in the
 * interval even when started as late as possible may not exceed the capacities.
 */
export class RemainingWork {
  private readonly net: BoundNet;
  private readonly bends: Int32Array;

  constructor(net: BoundNet) {
    this.net = net;
    this.bends = new Int32Array(net.durations.reduce((sum, duration) => sum + duration, 2));
  }

  /**
   * @param started the set of started activities as bits.
   * @param now no activity not started begins before.
   * @param latest latest finishes; `end` the largest of them.
   */
  fits(started: number, now: number, finishes: Int32Array, latest: Int32Array, end: number): boolean {
    const { count, durations, demands, capacities } = this.net;
    for (let i = 0; i < count; i++) {
      if ((started & (1 << i)) === 0 && (latest[i] ?? NONE) - (durations[i] ?? NONE) < now) return false;
    }
    for (let r = 0; r < capacities.length; r++) {
      const units = demands[r];
      if (units && !this.fitsResource(units, capacities[r] ?? NONE, started, now, finishes, latest, end))
        return false;
    }
    return true;
  }

  private fitsResource(
    units: Int32Array,
    capacity: number,
    started: number,
    now: number,
    finishes: Int32Array,
    latest: Int32Array,
    end: number,
  ): boolean {
    const { bends } = this;
    const { durations } = this.net;
    bends.fill(0, now, end + 2);
    for (let i = 0; i < units.length; i++) {
      const demand = units[i] ?? NONE;
      if (demand === 0) continue;
      const isStarted = (started & (1 << i)) !== 0;
      const to = (isStarted ? finishes[i] : latest[i]) ?? NONE;
      const from = isStarted ? now : to - (durations[i] ?? NONE);
      if (to <= from) continue;
      bends[from] = (bends[from] ?? NONE) + demand;
      bends[to] = (bends[to] ?? NONE) - demand;
    }
    let slope = 0;
    let spare = 0;
    for (let day = now; day < end; day++) {
      slope += bends[day] ?? NONE;
      spare += capacity - slope;
      if (spare < 0) return false;
    }
    return true;
  }
}
