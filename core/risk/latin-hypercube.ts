import { hashText, randomStream } from '../base';

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

/**
 * Levels (0 to 1) in rising order, one in each stratum of the chunk: a Latin hypercube column before it is
 * shuffled. The chunks share out the finer strata of the whole run among themselves, so that every full
 * chunk, and all full chunks together, are Latin hypercubes.
 * @param out the first chunkSize values are filled.
 * @source P. Z. G. Qian, Sliced Latin hypercube designs, J. Amer. Statist. Assoc. 107 (2012) 393-399.
 */
export function strata(plan: TrialPlan, id: string, chunk: number, out: Float64Array): void {
  const n = chunkSize(plan, chunk);
  const slices = n === TRIALS_PER_CHUNK ? Math.floor(plan.trials / TRIALS_PER_CHUNK) : 1;
  const turn = hashText(id, plan.seed);
  const random = randomStream(plan.seed, `${id}#${chunk}#within`);
  for (let s = 0; s < n; s++) {
    const slice = slices === 1 ? 0 : (chunk + firstSlice(turn, s, slices)) % slices;
    out[s] = (s + (slice + random()) / slices) / n;
  }
}

/** Which finer stratum the first chunk takes inside the coarse stratum `s`; the next chunks take the next ones. */
function firstSlice(turn: number, s: number, slices: number): number {
  let x = (turn ^ Math.imul(s + 1, 0x9e3779b1)) >>> 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return Math.floor((((x ^ (x >>> 16)) >>> 0) / 4294967296) * slices);
}

/** The order of the strata in the trials of a chunk: a random permutation of 0 to n - 1 that belongs to the id. */
export function trialOrder(plan: TrialPlan, id: string, chunk: number, order: Uint16Array): void {
  const n = chunkSize(plan, chunk);
  const random = randomStream(plan.seed, `${id}#${chunk}`);
  for (let i = 0; i < n; i++) {
    const j = Math.floor(random() * (i + 1));
    order[i] = order[j] ?? 0;
    order[j] = i;
  }
}
