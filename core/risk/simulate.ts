import type { TrialPlan } from './latin-hypercube';
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
 * Runs all waves on worker threads. Asked to stop, no further job is given out; those in hand end and are dropped.
 * @param run gives a job to a free worker; each worker holds a trialRunner of the same prepared run and plan.
 * @param hands how many jobs are given out at a time: enough that no worker waits, few so that a stop is quick.
 */
export async function drainOnWorkers<R>(
  waves: Waves<R>,
  run: (job: ChunkJob) => Promise<ChunkResult>,
  watch: Watch,
  hands: number,
): Promise<R | undefined> {
  let done = 0;
  const isStopped = () => watch.shouldStop?.() === true;
  const wave = async (jobs: readonly ChunkJob[]): Promise<ChunkResult[]> => {
    const results: ChunkResult[] = [];
    const waiting = [...jobs.entries()].reverse();
    const hand = async (): Promise<void> => {
      for (let next = waiting.pop(); next !== undefined && !isStopped(); next = waiting.pop()) {
        const [place, job] = next;
        const result = await run(job);
        results[place] = result;
        done += result.total.length;
        if (!isStopped()) watch.onProgress?.(done);
      }
    };
    await Promise.all(Array.from({ length: hands }, hand));
    return results;
  };
  let step = waves.next();
  while (step.done !== true) {
    const results = await wave(step.value);
    if (isStopped()) return undefined;
    step = waves.next(results);
  }
  return step.value;
}
