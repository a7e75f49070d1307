import { BugError, intAt } from '../../base';
import { datedNetsOf } from './compile-dated';
import { isPlain, plainNetOf } from './compile-plain';
import { DatedSide } from './dated-side';
import { individualOf, type Individual } from './individual';
import { normalised } from './lags';
import { inOrder } from './random-order';
import { PlainSide } from './plain-side';
import type { SearchProblem } from './problem';
import type { Side } from './side';

/** What one trial came to; the arrays are used again by the next trial. */
export interface Trial {
  readonly starts: Int32Array;
  readonly finishes: Int32Array;
  /** The last finish. */
  readonly finish: number;
  /** Days by which latest finishes, fixed starts and maximum lags are broken; 0: all are kept. */
  readonly late: number;
}

/**
 * Schedules a problem again and again with other durations in the order of a given list, one pass a trial: for
 * risk, where the crews follow the plan and the days come as they come. Each decoder has its own working memory.
 */
export class TrialDecoder {
  private readonly problem: SearchProblem;
  private readonly made: Individual;
  private readonly durations: Int32Array;
  private side: Side;
  private base: number;
  /** Sum of durations the working memory has room for. */
  private room: number;

  constructor(problem: SearchProblem) {
    this.problem = problem;
    this.made = individualOf(problem.activities.length);
    this.durations = Int32Array.from(problem.activities, activity => activity.duration);
    this.room = 2 * this.durations.reduce((sum, duration) => sum + duration, 1);
    [this.side, this.base] = this.sideWithRoom();
  }

  private sideWithRoom(): [Side, number] {
    const { problem, durations, room } = this;
    if (isPlain(problem)) return [new PlainSide({ ...plainNetOf(problem), durations, slots: room }), 0];
    const [net] = datedNetsOf(problem, normalised(problem), room);
    const anchor = { moment: net.base + problem.horizon, late: Infinity };
    return [new DatedSide({ ...net, durations }, true, anchor), net.base];
  }

  /** The list of a schedule: the activities by start, each after its predecessors. */
  listBy(starts: Int32Array): Int32Array {
    const byStart = [...starts.keys()].sort((a, b) => intAt(starts, a) - intAt(starts, b));
    return inOrder(this.side, byStart);
  }

  /**
   * One pass over the list with the given durations.
   * @param list from {@link listBy}.
   * @param durations whole work days, one an activity.
   */
  decode(list: Int32Array, durations: ArrayLike<number>): Trial {
    let sum = 0;
    for (let i = 0; i < this.durations.length; i++) {
      const duration = durations[i] ?? -1;
      if (!(duration >= 0)) throw new BugError(`Activity ${i} has no duration in this trial`);
      this.durations[i] = duration;
      sum += duration;
    }
    if (sum > this.room) {
      this.room = 2 * sum;
      [this.side, this.base] = this.sideWithRoom();
    }
    this.side.decode(list, this.made, Infinity);
    return this.trial();
  }

  private trial(): Trial {
    const { starts, finishes, last, late } = this.made;
    const { base } = this;
    if (base > 0) {
      for (let i = 0; i < starts.length; i++) {
        starts[i] = intAt(starts, i) - base;
        finishes[i] = intAt(finishes, i) - base;
      }
    }
    return { starts, finishes, finish: last - base, late };
  }
}
