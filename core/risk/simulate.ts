import { TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import type { PreparedRun } from './prepared';
import type { SimulationResult } from './result';
import { simulation, type SimulationOptions, type Waves } from './simulation';
import { trialRunner, type ChunkJob, type ChunkResult } from './trial-runner';

/** How a long run reports and is asked to end. */
export interface Watch {
  /** Trials done, those run again for the drivers included. */
  readonly onProgress?: (trialsDone: number) => void;
  /** Asked after every chunk of trials; yes ends the run without a result, and the previous one stands. */
  readonly shouldStop?: () => boolean;
}

/**
 * Simulates in this thread.
 * @param prepared the estimate made ready by the evaluation.
 * @returns the result, or nothing when it was asked to stop.
 * @example simulate(prepared, { trials: 10000, seed: 1 })
 */
export function simulate(
  prepared: PreparedRun,
  options: SimulationOptions & Watch,
): SimulationResult | undefined {
  return drain(simulation(prepared, options), prepared, options, options);
}

/** Runs all waves in this thread. */
export function drain<R>(
  waves: Waves<R>,
  prepared: PreparedRun,
  plan: TrialPlan,
  watch: Watch,
): R | undefined {
  const runner = trialRunner(prepared, plan);
  let done = 0;
  let step = waves.next();
  while (step.done !== true) {
    const results: ChunkResult[] = [];
    for (const job of step.value) {
      if (watch.shouldStop?.() === true) return undefined;
      const result = runner.run(job);
      results.push(result);
      done += result.total.length;
      watch.onProgress?.(done);
    }
    step = waves.next(results);
  }
  return step.value;
}

/**
 * Runs all waves on worker threads.
 * @param run gives a job to a free worker; each worker holds a trialRunner of the same prepared run and plan.
 */
export async function drainOnWorkers<R>(
  waves: Waves<R>,
  run: (job: ChunkJob) => Promise<ChunkResult>,
  watch: Watch,
): Promise<R | undefined> {
  let done = 0;
  const runWatched = async (job: ChunkJob): Promise<ChunkResult | undefined> => {
    if (watch.shouldStop?.() === true) return undefined;
    const result = await run(job);
    done += Math.min(TRIALS_PER_CHUNK, result.total.length);
    watch.onProgress?.(done);
    return result;
  };
  let step = waves.next();
  while (step.done !== true) {
    const answers = await Promise.all(step.value.map(runWatched));
    const results = answers.filter(answer => answer !== undefined);
    if (results.length < answers.length || watch.shouldStop?.() === true) return undefined;
    step = waves.next(results);
  }
  return step.value;
}
