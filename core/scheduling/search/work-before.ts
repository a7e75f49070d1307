import { intAt, valueAt } from '../../base';
import type { Individual } from './individual';

/** The work of a schedule done before each moment, so that the work inside any stretch is one subtraction. */
export class WorkBefore {
  private low = 0;
  private sums = new Float64Array(0);

  /** Reads a schedule. @param weights work of each activity a day. */
  read(schedule: Individual, weights: Float64Array): void {
    const { starts, finishes, low, last } = schedule;
    const span = last - low + 2;
    if (this.sums.length < span) this.sums = new Float64Array(2 * span);
    const { sums } = this;
    this.low = low;
    const { length } = starts;
    sums.fill(0, 0, span);
    for (let i = 0; i < length; i++) {
      const weight = valueAt(weights, i);
      const from = Math.max(0, intAt(starts, i) - low) + 1;
      const to = intAt(finishes, i) - low + 1;
      sums[from] = valueAt(sums, from) + weight;
      sums[to] = valueAt(sums, to) - weight;
    }
    let rate = 0;
    let sum = 0;
    for (let moment = 1; moment < span; moment++) {
      rate += valueAt(sums, moment);
      sums[moment] = sum += rate;
    }
  }

  /** The work between two moments of the schedule. */
  within(from: number, to: number): number {
    return valueAt(this.sums, to - this.low) - valueAt(this.sums, from - this.low);
  }
}
