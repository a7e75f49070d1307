import { AS_IT_IS, type Adjustment } from './adjustment';
import { coverageFindings } from './coverage';
import { distributionFindings } from './distributions';
import { candidates, driverJobs, driverRows, type DriverRow } from './drivers';
import { chunkCount, TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import { correlationFindings } from './levels';
import type { PreparedRun } from './prepared';
import { resultOf, type SimulationResult } from './result';
import { screen } from './screening';
import { isSureEnough, type StopRule } from './stop-rule';
import type { ChunkJob, ChunkResult } from './trial-runner';
import { joinChunks, type Trials } from './trials';

/** What is asked of a simulation. */
export interface SimulationOptions extends TrialPlan {
  /** Stop before `trials` when this is met. Looked at after every 2,000 trials, on any machine. */
  readonly stop?: StopRule;
  /** Whether to rank the drivers, which runs part of the trials again; default yes. */
  readonly ranksDrivers?: boolean;
}

/** Work handed out in waves: the jobs of a wave may run in any order on any thread, the answers come in theirs. */
export type Waves<R> = Generator<readonly ChunkJob[], R, readonly ChunkResult[]>;

const CHUNKS_PER_LOOK = 8;

/** The course of a simulation, free of threads and clocks: the same seed gives the same bits however it is run. */
export function* simulation(prepared: PreparedRun, options: SimulationOptions): Waves<SimulationResult> {
  const findings = [
    ...prepared.inputs.flatMap(i => distributionFindings(i.distribution, `/risk/inputs/${i.id}`)),
    ...correlationFindings(prepared),
    ...coverageFindings(prepared),
  ];
  const results: ChunkResult[] = [];
  for (const wave of firstWaves(options)) {
    results.push(...(yield wave));
    if (options.stop !== undefined && isMet(options.stop, results)) break;
  }
  const trials = joinChunks(results);
  const drivers = options.ranksDrivers === false ? [] : yield* rankedDrivers(prepared, options, trials);
  return resultOf(prepared, options, trials, drivers, findings);
}

function firstWaves(options: SimulationOptions): ChunkJob[][] {
  const jobs = jobsFor(options, options.ranksDrivers !== false);
  if (options.stop === undefined) return [jobs];
  const waves = Math.ceil(jobs.length / CHUNKS_PER_LOOK);
  return Array.from({ length: waves }, (_, w) => jobs.slice(w * CHUNKS_PER_LOOK, (w + 1) * CHUNKS_PER_LOOK));
}

function jobsFor(plan: TrialPlan, screens: boolean): ChunkJob[] {
  return Array.from({ length: chunkCount(plan) }, (_, chunk) => ({ chunk, adjustment: AS_IT_IS, screens }));
}

function isMet(rule: StopRule, results: readonly ChunkResult[]): boolean {
  const { total, finish } = joinChunks(results);
  return isSureEnough(rule, total, finish);
}

function* rankedDrivers(prepared: PreparedRun, plan: TrialPlan, trials: Trials): Waves<DriverRow[]> {
  const measured = candidates(screen(prepared, trials));
  const again = yield driverJobs(measured, trials.total.length);
  return driverRows(prepared, plan, trials, measured, again);
}

/** Trials of a plan, its first ones, that adjusted runs are compared on at most. */
export const COMPARED_TRIALS = 2000;

/**
 * Runs the first trials of a plan once for each adjustment with the same draws.
 * @param most trials at most, whole chunks; differences with the same draws need few.
 */
export function* adjustedRuns(
  plan: TrialPlan,
  adjustments: readonly Adjustment[],
  most: number = plan.trials,
): Waves<Trials[]> {
  const count = Math.min(chunkCount(plan), Math.max(1, Math.ceil(most / TRIALS_PER_CHUNK)));
  const chunks = Array.from({ length: count }, (_, chunk) => chunk);
  const results = yield chunks.flatMap(chunk => adjustments.map(adjustment => ({ chunk, adjustment })));
  return adjustments.map((_, i) => joinChunks(results.filter((_chunk, k) => k % adjustments.length === i)));
}
