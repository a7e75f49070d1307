import { intAt, valueAt } from '../../base';

/** A schedule as the genetic search holds it, in the time direction it was made in. */
export interface Individual {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
  /** The activities by falling finish, once the schedule is a parent. */
  readonly order: Int32Array;
  /** The first start and the last finish. */
  low: number;
  last: number;
  /** Days the objective lies beyond `last - low` on account of dates; 0 in plain networks. */
  beyond: number;
  /** Days by which limits are broken; 0: every limit is kept. */
  late: number;
  /** What selection compares: the objective, and as its fraction the work left near the end. */
  value: number;
  hash: number;
  /** Whether the pass went to its end. */
  isWhole: boolean;
}

/** Schedules whose numbers lie side by side: many small arrays of their own take long to make and to sweep up. */
const SIDE_BY_SIDE = 32;

/** Makes empty schedules of one network. */
export class Individuals {
  private readonly count: number;
  private room: Int32Array;
  private used = 0;

  /** @param count activities of the network. @param atFirst how many are surely asked for. */
  constructor(count: number, atFirst: number) {
    this.count = count;
    this.room = new Int32Array(3 * count * atFirst);
  }

  next(): Individual {
    if (this.used === this.room.length) {
      this.room = new Int32Array(3 * this.count * SIDE_BY_SIDE);
      this.used = 0;
    }
    return {
      starts: this.numbers(),
      finishes: this.numbers(),
      order: this.numbers(),
      low: 0,
      last: 0,
      beyond: 0,
      late: 0,
      value: Infinity,
      hash: 0,
      isWhole: true,
    };
  }

  private numbers(): Int32Array {
    this.used += this.count;
    return this.room.subarray(this.used - this.count, this.used);
  }
}

/** One empty schedule alone. */
export function individualOf(count: number): Individual {
  return new Individuals(count, 1).next();
}

/** A day late weighs as much as this many days of the objective. */
const LATE_WEIGHT = 1000;

/**
 * Fills in hash and value of a decoded schedule.
 * @param weights work of each activity a day as a share of the capacities, at most 1.
 * @param tail periods before the end in which work left over counts.
 */
export function assess(made: Individual, weights: Float64Array, tail: number): void {
  const { starts, finishes, last } = made;
  const edge = last - tail;
  let hash = 0;
  let left = 0;
  for (let i = 0; i < finishes.length; i++) {
    const finish = intAt(finishes, i);
    hash = (Math.imul(hash, 31) + finish) | 0;
    if (finish > edge) {
      const start = intAt(starts, i);
      left += (finish - (start > edge ? start : edge)) * valueAt(weights, i);
    }
  }
  made.hash = hash;
  made.value = last - made.low + made.beyond + LATE_WEIGHT * made.late + left / (tail + 1);
}

/** What counts first between schedules: the objective, with the days late; Infinity for one not made yet. */
export function lengthOf(made: Individual): number {
  return Math.floor(made.value);
}
