import { intAt } from '../../base';
import { type Dice } from './dice';
import type { PlainNet } from './plain-net';
import { drawBiased, Ready } from './random-order';
import { clearDays, fitsOn, holdFrom, type PassMemory } from './serial-pass';

/**
 * Parallel schedule generation: goes from moment to moment and starts whatever fits, drawing among the ready
 * activities with a bias towards small priorities (regret-based biased random sampling). Since nothing has started
 * later than now, what fits on the first day fits on all.
 * @source Kolisch, European Journal of Operational Research 90 (1996) 320-333; Kolisch and Drexl, European
 *   Journal of Operational Research 91 (1996) 22-37.
 */
export class ParallelPass {
  private readonly net: PlainNet;
  private readonly memory: PassMemory;
  private readonly priorities: Int32Array;
  private readonly ready: Ready;
  /** Where in the list of ready ones each stands that fits now. */
  private readonly fitting: Int32Array;
  private fittingSize = 0;
  private readonly running: Int32Array;
  private runningSize = 0;

  /** @param priorities the smaller, the sooner an activity is drawn. */
  constructor(net: PlainNet, memory: PassMemory, priorities: Int32Array) {
    this.net = net;
    this.memory = memory;
    this.priorities = priorities;
    this.ready = new Ready(net);
    this.fitting = new Int32Array(net.count);
    this.running = new Int32Array(net.count);
  }

  /**
   * @param bias how strong the bias is; 0 draws evenly.
   * @param finishes receives the finish of each activity.
   * @returns the last finish.
   */
  sample(bias: number, dice: Dice, finishes: Int32Array): number {
    const { net, memory, ready } = this;
    ready.begin();
    this.runningSize = 0;
    let last = 0;
    let placed = 0;
    for (let now = 0; ; now = this.finishNext(finishes, now)) {
      this.fill(now);
      while (this.fittingSize > 0) {
        const place = drawBiased(this.fitting, this.fittingSize, this.priorities, bias, dice);
        const activity = intAt(this.fitting, place);
        holdFrom(net, memory, activity, now);
        const finish = now + intAt(net.durations, activity);
        finishes[activity] = finish;
        if (finish > last) last = finish;
        placed++;
        ready.takeAt(ready.items.indexOf(activity));
        if (finish > now) {
          this.running[this.runningSize++] = activity;
          this.thin(activity, now);
        } else {
          ready.release(activity);
          this.fill(now);
        }
      }
      if (placed === net.count) break;
    }
    clearDays(net, memory, last);
    return last;
  }

  /** Notes those ready that fit now. */
  private fill(now: number): void {
    const { net, memory, ready, fitting } = this;
    let size = 0;
    for (let place = 0; place < ready.size; place++) {
      const activity = intAt(ready.items, place);
      if (fitsOn(net, memory, activity, now)) fitting[size++] = activity;
    }
    this.fittingSize = size;
  }

  /** Keeps those that still fit beside the one just placed. */
  private thin(placed: number, now: number): void {
    const { net, memory, fitting } = this;
    let kept = 0;
    for (let place = 0; place < this.fittingSize; place++) {
      const activity = intAt(fitting, place);
      if (activity !== placed && fitsOn(net, memory, activity, now)) fitting[kept++] = activity;
    }
    this.fittingSize = kept;
  }

  /** Goes on to the next finish of those running; what has waited for it becomes ready. */
  private finishNext(finishes: Int32Array, now: number): number {
    const { running } = this;
    let next = -1;
    for (let r = 0; r < this.runningSize; r++) {
      const finish = intAt(finishes, intAt(running, r));
      if (next < 0 || finish < next) next = finish;
    }
    let kept = 0;
    for (let r = 0; r < this.runningSize; r++) {
      const activity = intAt(running, r);
      if (finishes[activity] === next) this.ready.release(activity);
      else running[kept++] = activity;
    }
    this.runningSize = kept;
    return next < 0 ? now : next;
  }
}
