import { bitsKey, fillBits, scrambled, type BitsKey } from './numeric/random-bits';

/**
 * Trials are run in chunks of this many, each by itself on whatever thread. The size is part of the meaning
 * of a seed, so it does not depend on the machine.
 */
export const TRIALS_PER_CHUNK = 250;

/** How many trials, from which seed. */
export interface TrialPlan {
  /** At least 1. */
  readonly trials: number;
  /** A whole number. */
  readonly seed: number;
}

/** Number of chunks a plan is cut into; the last one may be short. */
export function chunkCount({ trials }: TrialPlan): number {
  return Math.ceil(trials / TRIALS_PER_CHUNK);
}

/** Number of trials in one chunk of the plan. */
export function chunkSize({ trials }: TrialPlan, chunk: number): number {
  return Math.min(TRIALS_PER_CHUNK, trials - chunk * TRIALS_PER_CHUNK);
}

const TWO_32 = 4294967296;

/**
 * The Latin hypercube column of one id. The chunks share out the finer strata of the whole run among
 * themselves, so that every full chunk, and all full chunks together, are Latin hypercubes.
 * @source P. Z. G. Qian, Sliced Latin hypercube designs, J. Amer. Statist. Assoc. 107 (2012) 393-399.
 */
export class HypercubeColumn {
  private readonly plan: TrialPlan;
  private readonly place: BitsKey;
  private readonly order: BitsKey;
  /** By coarse stratum: which finer stratum the first chunk takes; the next chunks take the next ones. */
  private readonly firstSlice: Uint32Array;
  private readonly bits = new Uint32Array(TRIALS_PER_CHUNK);

  constructor(plan: TrialPlan, id: string) {
    this.plan = plan;
    this.place = bitsKey(plan.seed, `${id}#within`);
    this.order = bitsKey(plan.seed, id);
    const slices = this.slicesOf(0);
    this.firstSlice = Uint32Array.from({ length: TRIALS_PER_CHUNK }, (_, s) =>
      Math.floor((scrambled(this.place.a ^ Math.imul(s + 1, 0x9e3779b1)) / TWO_32) * slices),
    );
  }

  /** Levels (0 to 1) in rising order, one in each stratum of the chunk. */
  rising(chunk: number, out: Float64Array): void {
    const { bits, firstSlice } = this;
    const n = chunkSize(this.plan, chunk);
    const slices = this.slicesOf(chunk);
    const width = 1 / slices;
    fillBits(this.place, chunk, bits);
    for (let s = 0; s < n; s++) {
      let slice = slices === 1 ? 0 : chunk + (firstSlice[s] ?? 0);
      if (slice >= slices) slice -= slices;
      out[s] = (s + (slice + (bits[s] ?? 0) / TWO_32) * width) / n;
    }
  }

  /** Levels in the order of the trials: the rising ones shuffled by the id's own order. */
  shuffled(chunk: number, out: Float64Array): void {
    const { bits } = this;
    const n = chunkSize(this.plan, chunk);
    this.rising(chunk, out);
    fillBits(this.order, chunk, bits);
    // The upper 24 bits times at most 250 stay below 2^32, so that the shift gives a whole number from 0 to i.
    for (let i = n - 1; i > 0; i--) {
      const j = (((bits[i] ?? 0) >>> 8) * (i + 1)) >>> 24;
      const level = out[i] ?? 0;
      out[i] = out[j] ?? 0;
      out[j] = level;
    }
  }

  /** The stratum of each trial: a random permutation of 0 to n - 1. */
  strata(chunk: number, order: Uint16Array): void {
    const { bits } = this;
    fillBits(this.order, chunk, bits);
    for (let i = 0; i < chunkSize(this.plan, chunk); i++) {
      const j = Math.floor(((bits[i] ?? 0) / TWO_32) * (i + 1));
      order[i] = order[j] ?? 0;
      order[j] = i;
    }
  }

  /** A short last chunk is a Latin hypercube by itself. */
  private slicesOf(chunk: number): number {
    const isFull = chunkSize(this.plan, chunk) === TRIALS_PER_CHUNK;
    return isFull ? Math.floor(this.plan.trials / TRIALS_PER_CHUNK) : 1;
  }
}
