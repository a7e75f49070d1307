import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { ChunkJob, ChunkResult, TrialPlan, TrialRunner } from '../../core/risk';

/** What a worker is started with: it reads and evaluates the same file by itself. */
export interface RiskWorkerData {
  readonly file: string;
  readonly today: string;
  readonly scenario: string | undefined;
  readonly plan: TrialPlan;
}

/** From the worker: it is ready, or the answer to a job by its number. */
export type RiskWorkerMessage =
  { readonly ready: true } | { readonly job: number; readonly result: ChunkResult };

/** A worker thread and the jobs it holds. */
interface Hand {
  readonly thread: Worker;
  inHand: number;
  isReady: boolean;
}

/** How many threads there are, this one included, and the code of a worker. */
export interface PoolSize {
  readonly threads: number;
  readonly worker?: URL;
}

/** As many threads as there are cores, up to eight. */
export const usualThreads = (): number => Math.min(availableParallelism(), 8);

/** Megabytes for what a worker has just made: trials leave next to nothing, so little room keeps the whole small. */
const YOUNG_MEGABYTES = 4;

/** Jobs a worker holds at most, so that it never waits for the next. */
const IN_HAND = 3;

/**
 * Threads for one simulation: this one and a worker for every other core. All hold the same prepared run, so it does
 * not matter which of them does a job.
 */
export class RiskPool {
  readonly #workers: Hand[];
  readonly #waiting: { readonly job: ChunkJob; readonly done: (result: ChunkResult) => void }[] = [];
  readonly #open = new Map<number, (result: ChunkResult) => void>();
  readonly #failed: (error: Error) => void;
  readonly failure: Promise<never>;
  readonly ready: Promise<unknown>;
  #runner: TrialRunner | undefined;
  #next = 0;
  #isPumping = false;

  /** Jobs that all threads hold together. */
  readonly hands: number;

  constructor(
    data: RiskWorkerData,
    { threads, worker = new URL('./risk-worker.js', import.meta.url) }: PoolSize = {
      threads: usualThreads(),
    },
  ) {
    let fail: (error: Error) => void = () => undefined;
    this.failure = new Promise((_, reject) => (fail = reject));
    this.#failed = fail;
    this.#workers = Array.from({ length: Math.max(0, threads - 1) }, () => ({
      thread: new Worker(worker, {
        workerData: data,
        resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MEGABYTES },
      }),
      inHand: 0,
      isReady: false,
    }));
    this.hands = 1 + IN_HAND * this.#workers.length;
    this.ready = Promise.race([this.failure, Promise.all(this.#workers.map(worker => this.#listen(worker)))]);
  }

  /** From now on this thread works too. */
  start(runner: TrialRunner): void {
    this.#runner = runner;
  }

  /** Gives a job to whichever thread is free next. */
  run(job: ChunkJob): Promise<ChunkResult> {
    const answer = new Promise<ChunkResult>(done => this.#waiting.push({ job, done }));
    if (!this.#isPumping) {
      this.#isPumping = true;
      setImmediate(() => {
        this.#pump();
      });
    }
    return Promise.race([answer, this.failure]);
  }

  async close(): Promise<void> {
    await Promise.all(this.#workers.map(worker => worker.thread.terminate()));
  }

  #listen(worker: Hand): Promise<void> {
    return new Promise(resolve => {
      worker.thread.on('error', this.#failed);
      worker.thread.on('message', (message: RiskWorkerMessage) => {
        if ('ready' in message) {
          worker.isReady = true;
          resolve();
          return;
        }
        worker.inHand--;
        this.#open.get(message.job)?.(message.result);
        this.#open.delete(message.job);
        this.#handOut();
      });
    });
  }

  #handOut(): void {
    for (const worker of this.#workers) {
      while (worker.isReady && worker.inHand < IN_HAND) {
        const next = this.#waiting.shift();
        if (next === undefined) return;
        const job = this.#next++;
        this.#open.set(job, next.done);
        worker.inHand++;
        worker.thread.postMessage({ job, chunk: next.job });
      }
    }
  }

  /** Hands jobs out, does one here, and looks at the messages in between. */
  #pump(): void {
    this.#handOut();
    const own = this.#runner === undefined ? undefined : this.#waiting.shift();
    if (own !== undefined && this.#runner !== undefined) own.done(this.#runner.run(own.job));
    this.#isPumping = this.#waiting.length > 0;
    if (this.#isPumping)
      setImmediate(() => {
        this.#pump();
      });
  }
}
