import { at, valueAt } from '../base';
import { contribution, contributionWhenAbsent, type TrialSizes } from './contribution';
import { chunkCount, TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import { levelsOf, occurrenceOf } from './levels';
import type { PreparedRun } from './prepared';
import type { Screened } from './screening';
import type { ChunkJob, ChunkResult } from './trial-runner';
import type { Trials } from './trials';
import type { Uncertainty } from './uncertainties';

/** How much one uncertainty matters. */
export interface DriverRow {
  readonly id: string;
  readonly title: string;
  readonly kind: Uncertainty['kind'];
  /** Share by which the variance of cost falls when it is held at its mode. Below zero: its mode is a bad place. */
  readonly contribution: number;
  /** The same for the finish. */
  readonly finishContribution: number;
  /** Mean cost in dollars at its low and its high end (lowest and highest tenth, or absent and present). */
  readonly costAtLow: number;
  readonly costAtHigh: number;
  /** Mean finish, day number, at the same ends. */
  readonly finishAtLow: number;
  readonly finishAtHigh: number;
}

/** How many drivers are measured by running part of the trials again with each held at its mode. */
const MEASURED_BY_COST = 11;
const MEASURED_BY_FINISH = 3;
/** Chunks run again for each, spread over the run. */
const CHUNKS_AGAIN = 3;

/** The uncertainties worth measuring: those that stand out in cost, then those that stand out in the finish. */
export function candidates(screened: readonly Screened[]): Screened[] {
  const top = (by: 'total' | 'finish', count: number) =>
    screened.toSorted((a, b) => b[by].share - a[by].share).slice(0, count);
  return [...new Set([...top('total', MEASURED_BY_COST), ...top('finish', MEASURED_BY_FINISH)])];
}

/** Below this probability the trials in which something does not happen are enough to tell their variance by. */
const SELDOM = 0.3;

/**
 * Whether holding it at its mode is read off the trials in which it does not happen: they are drawn as they would be
 * with it held, and there are enough of them.
 */
function isReadOff({ uncertainty: { kind, probability } }: Screened): boolean {
  return kind !== 'range' && probability < SELDOM;
}

/** The chunks to run again, with each candidate held that cannot be read off the trials. */
export function driverJobs(measured: readonly Screened[], trialsRun: number): ChunkJob[] {
  const adjustments = measured.filter(m => !isReadOff(m)).map(m => ({ held: [m.uncertainty.id] }));
  return chunksAgain(trialsRun).flatMap(chunk => adjustments.map(adjustment => ({ chunk, adjustment })));
}

function chunksAgain(trialsRun: number): number[] {
  const chunks = Math.floor(trialsRun / TRIALS_PER_CHUNK);
  if (chunks <= CHUNKS_AGAIN)
    return Array.from({ length: chunkCount({ trials: trialsRun, seed: 0 }) }, (_, i) => i);
  return Array.from({ length: CHUNKS_AGAIN }, (_, i) => Math.floor(((i + 0.5) * chunks) / CHUNKS_AGAIN));
}

/** The drivers in the order of their contribution to the variance of cost. */
export function driverRows(
  prepared: PreparedRun,
  plan: TrialPlan,
  trials: Trials,
  measured: readonly Screened[],
  again: readonly ChunkResult[],
): DriverRow[] {
  const sizes = trialSizes(
    prepared,
    plan,
    measured.map(m => m.uncertainty),
    trials.total.length,
  );
  const runAgain = measured.filter(m => !isReadOff(m));
  const rows = measured.map((m, i) => {
    const turn = runAgain.indexOf(m);
    const held = turn < 0 ? undefined : again.filter((_, k) => k % runAgain.length === turn);
    return row(m, trials, at(sizes, i), held);
  });
  return rows.sort((a, b) => b.contribution - a.contribution);
}

function row(
  { uncertainty, total, finish }: Screened,
  trials: Trials,
  sizes: TrialSizes,
  held: readonly ChunkResult[] | undefined,
): DriverRow {
  const falls = held === undefined ? readOff(trials, sizes) : runAgain(trials, sizes, held);
  return {
    id: uncertainty.id,
    title: uncertainty.title,
    kind: uncertainty.kind,
    contribution: falls.total,
    finishContribution: falls.finish,
    costAtLow: total.atLow,
    costAtHigh: total.atHigh,
    finishAtLow: finish.atLow,
    finishAtHigh: finish.atHigh,
  };
}

/** By what share the variances fall, of cost and of finish. */
interface Falls {
  readonly total: number;
  readonly finish: number;
}

function readOff({ total, finish }: Trials, { acts }: TrialSizes): Falls {
  return { total: contributionWhenAbsent(total, acts), finish: contributionWhenAbsent(finish, acts) };
}

function runAgain(trials: Trials, sizes: TrialSizes, held: readonly ChunkResult[]): Falls {
  const numbers = Uint32Array.from(
    held.flatMap(c => Array.from(c.total, (_, t) => c.chunk * TRIALS_PER_CHUNK + t)),
  );
  const of = (key: 'total' | 'finish') =>
    contribution(trials[key], sizes, numbers, Float64Array.from(held.flatMap(c => [...c[key]])));
  return { total: of('total'), finish: of('finish') };
}

function noSizes(trials: number): TrialSizes {
  return { acts: new Uint8Array(trials), size: new Float64Array(trials) };
}

/** Draws the levels of the measured uncertainties once more, for all trials. */
function trialSizes(
  prepared: PreparedRun,
  plan: TrialPlan,
  measured: readonly Uncertainty[],
  trialsRun: number,
): TrialSizes[] {
  const levels = levelsOf(prepared, plan, new Set(measured.flatMap(u => [u.id, occurrenceOf(u.id)])));
  const sizes = measured.map(() => noSizes(trialsRun));
  for (let chunk = 0; chunk * TRIALS_PER_CHUNK < trialsRun; chunk++) {
    levels.fill(chunk);
    for (const [i, u] of measured.entries()) {
      fillSizes(u, at(sizes, i), levels.byId, chunk * TRIALS_PER_CHUNK);
    }
  }
  return sizes;
}

function fillSizes(
  u: Uncertainty,
  out: TrialSizes,
  levels: ReadonlyMap<string, Float64Array>,
  first: number,
): void {
  const [level, occurrence] = [levels.get(u.id), levels.get(occurrenceOf(u.id))];
  const end = Math.min(out.acts.length, first + TRIALS_PER_CHUNK);
  for (let t = first; t < end; t++) {
    out.acts[t] = occurrence === undefined || valueAt(occurrence, t - first) < u.probability ? 1 : 0;
    out.size[t] = u.size(level?.[t - first] ?? Number.NaN);
  }
}
