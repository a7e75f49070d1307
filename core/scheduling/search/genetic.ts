import { at } from '../../base';
import { Dice } from './dice';
import { assess, Individuals, lengthOf, type Individual } from './individual';
import { ListMaker, type Block } from './list-maker';
import { Ready, sampledOrder } from './random-order';
import type { Side } from './side';
import type { Tuning } from './tuning';
import { WorkBefore } from './work-before';

/** What the search may still do; shared with the caller. */
export interface Spending {
  readonly limit: number;
  spent: number;
  /** Value of the best schedule that keeps every limit; Infinity without one. */
  best: number;
  /** No schedule has a smaller value. */
  lowerBound: number;
  readonly shouldStop: () => boolean;
  /** Hears of each schedule that is better than `best`; `isForward` tells its time direction. */
  readonly keep: (made: Individual, isForward: boolean) => void;
}

/** A time direction with the lists made for it and its population. */
interface Camp {
  readonly side: Side;
  readonly lists: ListMaker;
  readonly ready: Ready;
  readonly held: Set<number>;
  readonly isForward: boolean;
  population: Individual[];
}

/** Largest networks whose first population is made by the parallel scheme too. */
const SAMPLED_AT_MOST = 1000;

/**
 * Bi-population genetic search: one population of left-justified and one of right-justified schedules; parents
 * of one give a child of the other, so justification costs no extra pass.
 * @source Debels and Vanhoucke, Lecture Notes in Computer Science 3483 (2005) 378-387; Valls, Ballestin and
 *   Quintanilla, European Journal of Operational Research 185 (2008) 495-508 (busy blocks).
 */
export class GeneticSearch {
  private readonly dice: Dice;
  private readonly camps: readonly [Camp, Camp];
  private readonly list: Int32Array;
  private readonly work = new WorkBefore();
  private readonly individuals: Individuals;
  private limit: number;
  private generations = 0;
  private spare: [Individual, Individual];
  private readonly tuning: Tuning;
  private readonly spending: Spending;

  constructor(sides: readonly [Side, Side], tuning: Tuning, spending: Spending, seed: number) {
    this.tuning = tuning;
    this.limit = spending.limit;
    this.spending = spending;
    this.dice = new Dice(seed, 'genetic search');
    this.list = new Int32Array(sides[0].count);
    this.camps = [this.campOf(sides[0], true), this.campOf(sides[1], false)];
    this.individuals = new Individuals(sides[0].count, 2);
    this.spare = [this.individuals.next(), this.individuals.next()];
  }

  private campOf(side: Side, isForward: boolean): Camp {
    const ready = new Ready(side);
    const lists = new ListMaker(side, this.dice, this.tuning.tieOrders, ready);
    return { side, lists, ready, isForward, held: new Set(), population: [] };
  }

  /** Breeds until so many schedules are spent in all, the bound is met or the caller stops it. */
  evolve(limit: number): void {
    const [forward, backward] = this.camps;
    this.limit = Math.min(limit, this.spending.limit);
    for (; !this.isOver(); this.generations++) {
      if (this.generations % 2 === 0) this.generation(forward, backward);
      else this.generation(backward, forward);
    }
  }

  /** Makes one schedule that follows times of the backward direction: what can start last there comes last here. */
  follow({ starts, finishes }: { readonly starts: Int32Array; readonly finishes: Int32Array }): void {
    const [forward] = this.camps;
    const guide = this.individuals.next();
    guide.starts.set(starts);
    guide.finishes.set(finishes);
    guide.low = starts.reduce((low, start) => Math.min(low, start), Infinity);
    guide.last = finishes.reduce((last, finish) => Math.max(last, finish), 0);
    forward.lists.sort(guide);
    forward.lists.fromOne(guide, this.list);
    this.decode(forward, this.individuals.next(), Infinity);
  }

  private isOver(): boolean {
    const { spending } = this;
    return spending.best <= spending.lowerBound || spending.spent >= this.limit || spending.shouldStop();
  }

  /** The first left-justified population: half made forward, half backward and then justified to the left. */
  begin(): void {
    const [forward, backward] = this.camps;
    for (let slot = 0; slot < this.tuning.population && !this.isOver(); slot++) {
      const made = this.individuals.next();
      const isParallel = slot % 2 === 0;
      if (slot % 4 < 2) {
        this.sample(forward, isParallel, made);
      } else {
        this.sample(backward, isParallel, made);
        forward.lists.sort(made);
        forward.lists.fromOne(made, this.list);
        this.decode(forward, made, Infinity);
      }
      forward.population.push(made);
    }
    backward.population = forward.population.map(() => this.individuals.next());
  }

  private sample(camp: Camp, isParallel: boolean, made: Individual): void {
    const { side } = camp;
    if (isParallel && side.count <= SAMPLED_AT_MOST && side.sampleParallel) {
      this.count(camp, made, side.sampleParallel(this.tuning.bias, this.dice, made));
    } else {
      sampledOrder(camp.ready, side.priorities, this.tuning.bias, this.dice, this.list);
      this.decode(camp, made, Infinity);
    }
  }

  private decode(camp: Camp, made: Individual, limit: number): void {
    this.count(camp, made, camp.side.decode(this.list, made, limit));
  }

  /** Values the schedule, counts its cost and keeps it if it is the best. */
  private count(camp: Camp, made: Individual, cost: number): void {
    const { spending, tuning } = this;
    spending.spent += cost;
    if (!made.isWhole) {
      made.value = Infinity;
      return;
    }
    assess(made, camp.side.weights, tuning.tail);
    if (made.late === 0 && made.last - made.low + made.beyond < spending.best) {
      spending.keep(made, camp.isForward);
    }
  }

  /**
   * Every slot of `from` gives the better of two children to the same slot of `to`. Where shorter schedules are kept,
   * a pass may stop as soon as it must end later than what stands there.
   */
  private generation(from: Camp, to: Camp): void {
    const { population } = from;
    const { keepsShorter } = this.tuning;
    // Where populations come to rest soon, equal times get a new random order for every pair.
    if (keepsShorter) for (const parent of population) to.lists.sort(parent);
    for (let slot = 0; slot < population.length && !this.isOver(); slot++) {
      const first = at(population, slot);
      const second = at(population, this.drawMate(from, slot));
      if (!keepsShorter) for (const parent of [first, second]) to.lists.sort(parent);
      const most = this.mostFor(to.population[slot]);
      this.makeChild(to, first, second, this.spare[0], most);
      // The second child only matters when it is better than the first, or when that one is no use.
      const isUsed = this.spare[0].isWhole && !to.held.has(this.spare[0].hash);
      this.makeChild(to, second, first, this.spare[1], isUsed ? Math.min(most, this.spare[0].last) : most);
      this.replace(to, slot);
    }
  }

  private drawMate(from: Camp, slot: number): number {
    const { population } = from;
    let best = -1;
    for (let k = 0; k < this.tuning.tournament; k++) {
      const drawn = this.dice.below(population.length);
      if (drawn === slot) continue;
      if (best < 0 || at(population, drawn).value < at(population, best).value) best = drawn;
    }
    return best < 0 ? (slot + 1) % population.length : best;
  }

  private makeChild(to: Camp, keeper: Individual, other: Individual, child: Individual, limit: number): void {
    to.lists.fromTwo(keeper, other, this.drawBlock(keeper), this.list);
    let { shifts } = this.tuning;
    while (shifts > 0 && this.dice.share() < shifts) {
      to.lists.shiftOne(this.list);
      shifts--;
    }
    this.decode(to, child, limit);
  }

  /** The busiest of a few random stretches of the schedule. */
  private drawBlock(keeper: Individual): Block {
    const { tuning, dice } = this;
    let best = keeper.low;
    let bestLength = keeper.last - keeper.low;
    let most = -1;
    const span = bestLength;
    const { work } = this;
    work.read(keeper, this.camps[0].side.weights);
    for (let k = 0; k < tuning.blockTries; k++) {
      const share = tuning.blockLow + (tuning.blockHigh - tuning.blockLow) * dice.share();
      const length = Math.max(1, Math.round(share * span));
      const from = keeper.low + dice.below(span - length + 1);
      const use = work.within(from, from + length) / length;
      if (use > most) {
        most = use;
        best = from;
        bestLength = length;
      }
    }
    return { from: best, to: best + bestLength };
  }

  /** Puts the better child that may replace the old one into the slot, if there is one. */
  private replace(to: Camp, slot: number): void {
    const [first, second] = this.spare;
    const old = at(to.population, slot);
    const isFirstBetter = first.value <= second.value;
    const better = isFirstBetter ? first : second;
    const other = isFirstBetter ? second : first;
    const taken = this.mayReplace(to, old, better) ? better : this.mayReplace(to, old, other) ? other : null;
    if (!taken) return;
    to.held.delete(old.hash);
    to.held.add(taken.hash);
    to.population[slot] = taken;
    this.spare = taken === first ? [old, second] : [first, old];
  }

  /** Whether the child went to its end, is not held already and not too long. */
  private mayReplace(to: Camp, old: Individual, child: Individual): boolean {
    const isTooLong = this.tuning.keepsShorter && lengthOf(child) > lengthOf(old);
    return child.isWhole && !isTooLong && !to.held.has(child.hash);
  }

  /** The last finish that a schedule taking the place of `old` may have. */
  private mostFor(old: Individual | undefined): number {
    return old === undefined || old.value === Infinity || !this.tuning.keepsShorter ? Infinity : old.last;
  }
}
