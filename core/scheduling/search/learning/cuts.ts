import { intAt } from '../../../base';
import type { Windows } from '../bounds/windows';

/**
 * Statements about starts, numbered: of activity `i` the cut at moment `t` stands for "starts by t", its opposite for
 * "starts after t". A literal is twice the cut, plus 1 for "starts by".
 */
export class Cuts {
  /** Number of cuts. */
  readonly count: number;
  readonly activityOf: Int32Array;
  readonly momentOf: Int32Array;
  /** Adding a moment gives the cut of an activity. */
  readonly offsets: Int32Array;

  /** One cut for every moment in the windows at which the start of an activity may still be parted. */
  constructor(windows: Windows, durations: Int32Array) {
    const { from, to } = windows;
    this.count = cutsIn(windows, durations);
    this.activityOf = new Int32Array(this.count);
    this.momentOf = new Int32Array(this.count);
    this.offsets = new Int32Array(from.length);
    let cut = 0;
    for (let i = 0; i < from.length; i++) {
      const start = intAt(from, i);
      this.offsets[i] = cut - start;
      for (let moment = start; moment < intAt(to, i) - intAt(durations, i); moment++, cut++) {
        this.activityOf[cut] = i;
        this.momentOf[cut] = moment;
      }
    }
  }

  /** The literal "activity starts by the moment". */
  startsBy(activity: number, moment: number): number {
    return 2 * (intAt(this.offsets, activity) + moment) + 1;
  }

  /** The literal "activity starts at the moment or later". */
  startsFrom(activity: number, moment: number): number {
    return 2 * (intAt(this.offsets, activity) + moment - 1);
  }
}

/** How many cuts windows give. */
export function cutsIn({ from, to }: Windows, durations: Int32Array): number {
  return from.reduce((sum, start, i) => sum + intAt(to, i) - intAt(durations, i) - start, 0);
}
