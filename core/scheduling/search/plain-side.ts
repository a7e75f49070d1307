import { intAt } from '../../base';
import { type Dice } from './dice';
import type { Individual } from './individual';
import { ParallelPass } from './parallel-pass';
import type { Links, PlainNet } from './plain-net';
import { passMemoryOf, serialPass, type PassMemory } from './serial-pass';
import type { Side } from './side';
import { tailsOf } from './tails';

/** A plain network in one time direction; right-justified schedules are left-justified ones of reversed time. */
export class PlainSide implements Side {
  readonly count: number;
  readonly predecessors: Links;
  readonly successors: Links;
  readonly weights: Float64Array;
  readonly priorities: Int32Array;
  readonly span: number;
  readonly needsRepair = false;
  private readonly net: PlainNet;
  private readonly memory: PassMemory;
  private readonly parallel: ParallelPass;

  constructor(net: PlainNet) {
    this.net = net;
    this.memory = passMemoryOf(net);
    this.count = net.count;
    this.predecessors = net.predecessors;
    this.successors = net.successors;
    this.weights = net.weights;
    this.span = net.slots;
    this.priorities = tailsOf(net).map(tail => -tail);
    this.parallel = new ParallelPass(net, this.memory, this.priorities);
  }

  decode(list: Int32Array, made: Individual, limit: number): number {
    const last = serialPass(this.net, this.memory, list, made.finishes, limit);
    made.isWhole = last >= 0;
    if (last < 0) return -last / this.count;
    made.last = last;
    return this.fillStarts(made);
  }

  sampleParallel(bias: number, dice: Dice, made: Individual): number {
    made.last = this.parallel.sample(bias, dice, made.finishes);
    return this.fillStarts(made);
  }

  private fillStarts(made: Individual): number {
    const { durations } = this.net;
    const { starts, finishes } = made;
    for (let i = 0; i < starts.length; i++) starts[i] = intAt(finishes, i) - intAt(durations, i);
    return 1;
  }
}
