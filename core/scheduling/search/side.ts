import type { Dice } from './dice';
import type { Individual } from './individual';
import type { Links } from './plain-net';

/** One time direction of a network, as the genetic search sees it: it decodes activity lists into schedules. */
export interface Side {
  readonly count: number;
  readonly predecessors: Links;
  readonly successors: Links;
  /** Work of each activity a day as a share of the capacities, at most 1. */
  readonly weights: Float64Array;
  /** The smaller, the more urgent: latest finishes by the relationships alone. */
  readonly priorities: Int32Array;
  /** Most day slots between the first start and the last finish of a schedule. */
  readonly span: number;
  /** Whether sorting by time alone may put an activity before its predecessor (overlapping relationships). */
  readonly needsRepair: boolean;
  /**
   * Decodes a list into `made`: starts, finishes, low, last, beyond and late.
   * @param limit it may stop, and leave `made` not whole, once the last finish must become larger.
   * @returns what it cost in schedules: 1, or placements over activities.
   */
  decode(list: Int32Array, made: Individual, limit: number): number;
  /** Makes a schedule by biased sampling in the parallel scheme; absent where only lists are sampled. */
  sampleParallel?(bias: number, dice: Dice, made: Individual): number;
}
