import { NONE, type Dice } from './dice';
import type { PlainNet } from './plain-net';
import { drawBiased, openCounts, release } from './random-order';
import { clearDays, fitsOn, holdFrom, type PassMemory } from './serial-pass';

/**
 * Parallel schedule generation: goes from moment to moment and starts whatever fits, drawing among the ready
 * activities with a bias towards small `priorities` (regret-based biased random sampling). Since nothing has started
 * later than now, what fits on the first day fits on all.
 * @param bias how strong the bias is; 0 draws evenly.
 * @param finishes receives the finish of each activity.
 * @returns the last finish.
 * @source Kolisch, European Journal of Operational Research 90 (1996) 320-333; Kolisch and Drexl, European
 *   Journal of Operational Research 91 (1996) 22-37.
 */
export function sampledParallelPass(
  net: PlainNet,
  memory: PassMemory,
  priorities: Int32Array,
  bias: number,
  dice: Dice,
  finishes: Int32Array,
): number {
  const open = openCounts(net);
  const ready: number[] = [];
  for (let i = 0; i < net.count; i++) if (open[i] === 0) ready.push(i);
  const running: number[] = [];
  const fitting: number[] = [];
  let now = 0;
  let last = 0;
  let placed = 0;
  while (placed < net.count) {
    fill(net, memory, ready, fitting, now);
    while (fitting.length > 0) {
      const activity = fitting[drawBiased(fitting, priorities, bias, dice)] ?? NONE;
      holdFrom(net, memory, activity, now);
      const finish = now + (net.durations[activity] ?? NONE);
      finishes[activity] = finish;
      if (finish > last) last = finish;
      placed++;
      ready.splice(ready.indexOf(activity), 1);
      if (finish > now) {
        running.push(activity);
        thin(net, memory, fitting, activity, now);
      } else {
        release(net, activity, open, ready);
        fill(net, memory, ready, fitting, now);
      }
    }
    now = finishNext(net, running, finishes, open, ready, now);
  }
  clearDays(net, memory, last);
  return last;
}

/** Fills `fitting` with those ready that fit now. */
function fill(net: PlainNet, memory: PassMemory, ready: number[], fitting: number[], now: number): void {
  fitting.length = 0;
  for (const activity of ready) if (fitsOn(net, memory, activity, now)) fitting.push(activity);
}

/** Leaves in `fitting` those that still fit beside the one just placed. */
function thin(net: PlainNet, memory: PassMemory, fitting: number[], placed: number, now: number): void {
  let kept = 0;
  for (const activity of fitting) {
    if (activity !== placed && fitsOn(net, memory, activity, now)) fitting[kept++] = activity;
  }
  fitting.length = kept;
}

function finishNext(
  net: PlainNet,
  running: number[],
  finishes: Int32Array,
  open: Int32Array,
  ready: number[],
  now: number,
): number {
  let next = -1;
  for (const activity of running) {
    const finish = finishes[activity] ?? NONE;
    if (next < 0 || finish < next) next = finish;
  }
  for (let r = running.length - 1; r >= 0; r--) {
    const activity = running[r] ?? NONE;
    if (finishes[activity] !== next) continue;
    running.splice(r, 1);
    release(net, activity, open, ready);
  }
  return next < 0 ? now : next;
}
