import { NONE, Dice } from './dice';
import { individualOf, ListMaker, type Block, type Individual } from './list-maker';
import { reversedNet, type PlainNet } from './plain-net';
import { sampledParallelPass, sampleList } from './parallel-pass';
import { passMemoryOf, serialPass, type PassMemory } from './serial-pass';
import type { Tuning } from './tuning';

/** What the search may still do; shared with the caller. */
export interface Spending {
  readonly limit: number;
  spent: number;
  /** The best last finish so far and its schedule as starts in forward time. */
  best: number;
  readonly starts: Int32Array;
  readonly lowerBound: number;
  readonly shouldStop: () => boolean;
}

/** One time direction: its network, lists made from the other direction, and its population. */
interface Side {
  readonly net: PlainNet;
  readonly lists: ListMaker;
  readonly latest: Int32Array;
  readonly held: Set<number>;
  population: Individual[];
}

/**
 * Bi-population genetic search: one population of left-justified and one of right-justified schedules; parents
 * of one give a child of the other, so justification costs no extra pass.
 * @source Debels and Vanhoucke, Lecture Notes in Computer Science 3483 (2005) 378-387; Valls, Ballestin and
 *   Quintanilla, European Journal of Operational Research 185 (2008) 495-508 (busy blocks).
 */
export class GeneticSearch {
  private readonly dice: Dice;
  private readonly memory: PassMemory;
  private readonly sides: readonly [Side, Side];
  private readonly list: Int32Array;
  private spare: [Individual, Individual];

  private readonly net: PlainNet;
  private readonly tuning: Tuning;
  private readonly spending: Spending;

  constructor(net: PlainNet, tuning: Tuning, spending: Spending, seed: number) {
    this.net = net;
    this.tuning = tuning;
    this.spending = spending;
    this.dice = new Dice(seed, 'genetic search');
    this.memory = passMemoryOf(net);
    this.list = new Int32Array(net.count);
    this.sides = [this.sideOf(net), this.sideOf(reversedNet(net))];
    this.spare = [individualOf(net.count), individualOf(net.count)];
  }

  private sideOf(net: PlainNet): Side {
    const lists = new ListMaker(net, this.dice, this.tuning.tieOrders);
    return { net, lists, latest: latestFinishes(net), held: new Set(), population: [] };
  }

  /** Runs until the budget is spent, the bound is met or the caller stops it. */
  run(): void {
    this.begin();
    for (let generation = 0; !this.isOver(); generation++) {
      const from = this.sides[generation % 2 === 0 ? 0 : 1];
      const to = this.sides[generation % 2 === 0 ? 1 : 0];
      this.generation(from, to);
    }
  }

  private isOver(): boolean {
    const { spending } = this;
    return spending.best <= spending.lowerBound || spending.spent >= spending.limit || spending.shouldStop();
  }

  /** The first left-justified population: half made forward, half backward and then justified to the left. */
  private begin(): void {
    const [forward, backward] = this.sides;
    for (let slot = 0; slot < this.tuning.population && !this.isOver(); slot++) {
      const made = individualOf(this.net.count);
      const isParallel = slot % 2 === 0;
      if (slot % 4 < 2) {
        this.sample(forward, isParallel, made);
      } else {
        this.sample(backward, isParallel, made);
        forward.lists.fromOne(made, this.list);
        this.decode(forward, made);
      }
      forward.population.push(made);
    }
    backward.population = forward.population.map(() => individualOf(this.net.count));
  }

  private sample(side: Side, isParallel: boolean, made: Individual): void {
    const { net } = side;
    if (isParallel) {
      made.last = sampledParallelPass(net, this.memory, side.latest, this.tuning.bias, this.dice, made.finishes);
      this.assess(side, made);
    } else {
      sampleList(net, side.latest, this.tuning.bias, this.dice, this.list);
      this.decode(side, made);
    }
  }

  private decode(side: Side, made: Individual): void {
    made.last = serialPass(side.net, this.memory, this.list, made.finishes);
    this.assess(side, made);
  }

  /** Fills in starts, value and hash, counts the pass and keeps the best schedule. */
  private assess(side: Side, made: Individual): void {
    const { net, spending, tuning } = this;
    const { durations, weights } = net;
    const { starts, finishes, last } = made;
    const edge = last - tuning.tail;
    let hash = 0;
    let late = 0;
    for (let i = 0; i < finishes.length; i++) {
      const finish = finishes[i] ?? NONE;
      const start = finish - (durations[i] ?? NONE);
      starts[i] = start;
      hash = (Math.imul(hash, 31) + finish) | 0;
      if (finish > edge) late += (finish - (start > edge ? start : edge)) * (weights[i] ?? NONE);
    }
    made.hash = hash;
    made.value = last + late / (tuning.tail + 1);
    spending.spent++;
    if (last < spending.best) this.keep(side, made);
  }

  private keep(side: Side, made: Individual): void {
    const { spending } = this;
    spending.best = made.last;
    const isForward = side === this.sides[0];
    for (let i = 0; i < made.starts.length; i++) {
      spending.starts[i] = isForward ? (made.starts[i] ?? NONE) : made.last - (made.finishes[i] ?? NONE);
    }
  }

  /** Every slot of `from` gives the better of two children to the same slot of `to`. */
  private generation(from: Side, to: Side): void {
    const { population } = from;
    for (let slot = 0; slot < population.length && !this.isOver(); slot++) {
      const first = population[slot];
      const second = population[this.drawMate(from, slot)];
      if (!first || !second) continue;
      this.makeChild(to, first, second, this.spare[0]);
      this.makeChild(to, second, first, this.spare[1]);
      this.replace(to, slot);
    }
  }

  private drawMate(from: Side, slot: number): number {
    const { population } = from;
    let best = -1;
    for (let k = 0; k < this.tuning.tournament; k++) {
      const drawn = this.dice.below(population.length);
      if (drawn === slot) continue;
      if (best < 0 || (population[drawn]?.value ?? NONE) < (population[best]?.value ?? NONE)) best = drawn;
    }
    return best < 0 ? (slot + 1) % population.length : best;
  }

  private makeChild(to: Side, keeper: Individual, other: Individual, child: Individual): void {
    to.lists.fromTwo(keeper, other, this.drawBlock(keeper), this.list);
    let { shifts } = this.tuning;
    while (shifts > 0 && this.dice.share() < shifts) {
      to.lists.shiftOne(this.list);
      shifts--;
    }
    this.decode(to, child);
  }

  /** The busiest of a few random stretches of the schedule. */
  private drawBlock(keeper: Individual): Block {
    const { tuning, dice } = this;
    let best: Block = { from: 0, to: keeper.last };
    let most = -1;
    for (let k = 0; k < tuning.blockTries; k++) {
      const share = tuning.blockLow + (tuning.blockHigh - tuning.blockLow) * dice.share();
      const length = Math.max(1, Math.round(share * keeper.last));
      const from = dice.below(keeper.last - length + 1);
      const use = this.useWithin(keeper, from, from + length) / length;
      if (use > most) {
        most = use;
        best = { from, to: from + length };
      }
    }
    return best;
  }

  private useWithin(keeper: Individual, from: number, to: number): number {
    const { starts, finishes } = keeper;
    const { weights } = this.net;
    let use = 0;
    for (let i = 0; i < starts.length; i++) {
      const start = starts[i] ?? NONE;
      const finish = finishes[i] ?? NONE;
      if (finish > from && start < to) {
        use += ((finish < to ? finish : to) - (start > from ? start : from)) * (weights[i] ?? NONE);
      }
    }
    return use;
  }

  /** Puts the better child not already held into the slot; the old one stays when both are held already. */
  private replace(to: Side, slot: number): void {
    const order = this.spare[0].value <= this.spare[1].value ? [0, 1] : [1, 0];
    const old = to.population[slot];
    if (!old) return;
    for (const which of order) {
      const child = this.spare[which === 0 ? 0 : 1];
      if (to.held.has(child.hash)) continue;
      to.held.delete(old.hash);
      to.held.add(child.hash);
      to.population[slot] = child;
      this.spare = which === 0 ? [old, this.spare[1]] : [this.spare[0], old];
      return;
    }
  }
}

/** Latest finishes by the critical path alone, for an end at 0: the smaller, the more urgent. */
function latestFinishes(net: PlainNet): Int32Array {
  const latest = new Int32Array(net.count);
  const { first, list } = net.successors;
  const tail = (activity: number): number => {
    let least = 0;
    for (let s = first[activity] ?? NONE; s < (first[activity + 1] ?? NONE); s++) {
      const next = list[s] ?? NONE;
      least = Math.min(least, (latest[next] ?? NONE) - (net.durations[next] ?? NONE));
    }
    return least;
  };
  const open = new Int32Array(net.count);
  const ready: number[] = [];
  for (let i = 0; i < net.count; i++) {
    open[i] = (first[i + 1] ?? NONE) - (first[i] ?? NONE);
    if (open[i] === 0) ready.push(i);
  }
  for (let activity = ready.pop(); activity !== undefined; activity = ready.pop()) {
    latest[activity] = tail(activity);
    const { predecessors } = net;
    for (let p = predecessors.first[activity] ?? NONE; p < (predecessors.first[activity + 1] ?? NONE); p++) {
      const before = predecessors.list[p] ?? NONE;
      open[before] = (open[before] ?? NONE) - 1;
      if (open[before] === 0) ready.push(before);
    }
  }
  return latest;
}
