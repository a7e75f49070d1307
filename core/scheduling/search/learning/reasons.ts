import { at, intAt } from '../../../base';
import type { BoundNet } from '../bounds/bound-net';
import type { StartRanges } from './start-ranges';

/** Hears of the limits a reason rests on: the activity starts at `moment` or later, or by it. */
export interface Premises {
  startsFrom(activity: number, moment: number): void;
  startsBy(activity: number, moment: number): void;
}

/** Finds which compulsory parts fill a day. */
export class FullDays {
  private readonly net: BoundNet;
  private readonly ranges: StartRanges;
  private readonly members: Int32Array;

  constructor(net: BoundNet, ranges: StartRanges) {
    this.net = net;
    this.ranges = ranges;
    this.members = new Int32Array(net.count);
  }

  /**
   * Names the limits that make certain activities run on a day, no more of them than exceed a capacity together with
   * the demand of `beside`; -1: their own.
   * @source Schutt, Feydt, Stuckey and Wallace, Constraints 16 (2011) 250-282 (explanations of the cumulative).
   */
  explain(day: number, beside: number, premises: Premises): void {
    const { capacities, demands, durations } = this.net;
    for (let r = 0; r < capacities.length; r++) {
      const units = demands[r];
      if (!units) continue;
      const own = beside < 0 ? 0 : intAt(units, beside);
      if (beside >= 0 && own === 0) continue;
      const sum = this.gather(units, day, beside);
      let spare = sum.units + own - at(capacities, r) - 1;
      if (spare < 0) continue;
      for (let k = 0; k < sum.count; k++) {
        const member = intAt(this.members, k);
        const demand = intAt(units, member);
        if (demand <= spare) {
          spare -= demand;
          continue;
        }
        premises.startsBy(member, day);
        premises.startsFrom(member, day - intAt(durations, member) + 1);
      }
      return;
    }
  }

  private gather(units: Int32Array, day: number, beside: number): { units: number; count: number } {
    const { durations } = this.net;
    const { first, last } = this.ranges;
    let sum = 0;
    let count = 0;
    for (let i = 0; i < units.length; i++) {
      const demand = intAt(units, i);
      if (demand === 0 || intAt(last, i) > day || i === beside) continue;
      if (intAt(first, i) + intAt(durations, i) <= day) continue;
      sum += demand;
      this.members[count++] = i;
    }
    return { units: sum, count };
  }
}
