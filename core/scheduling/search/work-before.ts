import { NONE } from './dice';
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
      const weight = weights[i] ?? NONE;
      const from = Math.max(0, (starts[i] ?? NONE) - low) + 1;
      const to = (finishes[i] ?? NONE) - low + 1;
      sums[from] = (sums[from] ?? NONE) + weight;
      sums[to] = (sums[to] ?? NONE) - weight;
    }
    let rate = 0;
    let sum = 0;
    for (let moment = 1; moment < span; moment++) {
      rate += sums[moment] ?? NONE;
      sums[moment] = sum += rate;
    }
  }

  /** The work between two moments of the schedule. */
  within(from: number, to: number): number {
    return (this.sums[to - this.low] ?? NONE) - (this.sums[from - this.low] ?? NONE);
  }
}
