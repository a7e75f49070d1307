import { intAt } from '../../base';
import type { Arcs, DatedNet } from './dated-net';
import { demandedStart, heldUntil, hold, place, type Times } from './dated-pass';

/** Placements a pass may spend, as a multiple of the activities, before it leaves a maximum lag broken. */
const PATIENCE = 6;

/**
 * Serial schedule generation where maximum lags exist. When an activity cannot lie early enough for one, the
 * activity the lag comes from is moved later and everything from it on in the list is placed again.
 * @source Franck, Neumann and Schwindt, OR Spektrum 23 (2001) 297-324 (unscheduling).
 */
export class LagPasses {
  private readonly net: DatedNet;
  private readonly free: Int32Array;
  private readonly raised: Int32Array;
  private readonly placeOf: Int32Array;

  constructor(net: DatedNet, free: Int32Array) {
    this.net = net;
    this.free = free;
    this.raised = new Int32Array(net.count);
    this.placeOf = new Int32Array(net.count);
  }

  /**
   * One pass over the list.
   * @param made its `late` grows by the days by which maximum lags stay broken.
   * @returns the cost in schedules: placements over activities.
   */
  pass(list: Int32Array, floor: number, made: Times & { late: number }): number {
    const { net, free, raised, placeOf } = this;
    for (let k = 0; k < list.length; k++) placeOf[intAt(list, k)] = k;
    for (let i = 0; i < raised.length; i++) raised[i] = Math.max(floor, intAt(net.release, i));
    let spent = 0;
    for (let k = 0; k < list.length; spent++) {
      const activity = intAt(list, k);
      const only = intAt(net.fixed, activity);
      const held = Math.max(heldUntil(net, activity, made), this.pulledTo(activity, k, made));
      place(net, free, activity, only >= 0 ? only : Math.max(intAt(raised, activity), held), made);
      if (only >= 0) made.late += Math.max(0, held - only);
      const back = this.firstToMove(activity, k, made, spent < PATIENCE * list.length);
      hold(net, free, activity, made, -1);
      if (back > k) {
        k++;
        continue;
      }
      for (let undo = back; undo <= k; undo++) hold(net, free, intAt(list, undo), made, 1);
      k = back;
    }
    return spent / Math.max(1, list.length);
  }

  /** The start that maximum lags to activities already placed demand. */
  private pulledTo(activity: number, k: number, made: Times): number {
    const { pulls } = this.net;
    let earliest = 0;
    for (let arc = intAt(pulls.first, activity); arc < intAt(pulls.first, activity + 1); arc++) {
      const other = intAt(pulls.other, arc);
      if (intAt(this.placeOf, other) >= k) continue;
      earliest = Math.max(earliest, demandedStart(this.net, pulls, arc, other, activity, made));
    }
    return earliest;
  }

  /** Raises what the maximum lags into the placed activity demand; the first place in the list to take again. */
  private firstToMove(
    activity: number,
    k: number,
    made: Times & { late: number },
    isPatient: boolean,
  ): number {
    const { net, raised, placeOf } = this;
    const arcs: Arcs = net.maximums;
    let back = k + 1;
    for (let arc = intAt(arcs.first, activity); arc < intAt(arcs.first, activity + 1); arc++) {
      const other = intAt(arcs.other, arc);
      if (intAt(placeOf, other) >= k) continue;
      const demanded = demandedStart(net, arcs, arc, activity, other, made);
      const missing = demanded - intAt(made.starts, other);
      if (missing <= 0) continue;
      if (!isPatient || intAt(net.fixed, other) >= 0) made.late += missing;
      else {
        raised[other] = Math.max(intAt(raised, other), demanded);
        back = Math.min(back, intAt(placeOf, other));
      }
    }
    return back;
  }
}
