import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { durationSum, lagsBetweenStarts } from './start-lags';
import type { SearchProblem } from '../../../core/scheduling/search';

/** What Chuffed found in its time. */
export interface PeerResult {
  readonly finish?: number;
  readonly isProved: boolean;
}

const MODEL = `include "cumulative.mzn";
int: n; int: resources; int: arcs; int: horizon;
array[1..n] of int: duration; array[1..resources] of int: capacity;
array[1..resources, 1..n] of int: demand; array[1..arcs, 1..3] of int: lag;
array[1..n] of var 0..horizon: start; var 0..horizon: finish;
constraint forall(k in 1..arcs)(start[lag[k, 1]] + lag[k, 3] <= start[lag[k, 2]]);
constraint forall(i in 1..n)(start[i] + duration[i] <= finish);
constraint forall(r in 1..resources)(cumulative(start, duration, [demand[r, i] | i in 1..n], capacity[r]));
solve :: int_search([finish] ++ start, smallest, indomain_min) minimize finish;
output [];`;

/** Milliseconds granted for reading and flattening the model, beside the seconds of search. */
const FLATTENING = 30_000;

/** The package's web worker, given the names of a browser that it looks for. */
const SHIM = `const { parentPort, workerData } = require('node:worker_threads');
globalThis.addEventListener = (_, listener) => parentPort.on('message', data => listener({ data }));
globalThis.postMessage = message => parentPort.postMessage(message);
const code = require('node:fs').readFileSync(workerData.file, 'utf8');
new Function('require', '__dirname', '__filename', code)(require, workerData.folder, workerData.file);`;

/**
 * Solves a problem without calendars by Chuffed in the npm package minizinc, for so many seconds of search;
 * flattening the model is not counted.
 * @source Chu, Improving combinatorial optimization, PhD thesis, University of Melbourne (2011).
 */
export async function solveByChuffed(problem: SearchProblem, seconds: number): Promise<PeerResult> {
  const folder = dirname(createRequire(import.meta.url).resolve('minizinc/minizinc.wasm'));
  const workerData = { folder, file: join(folder, 'minizinc-worker.js') };
  const worker = new Worker(SHIM, { eval: true, workerData, stderr: true, stdout: true });
  let best: PeerResult = { isProved: false };
  const milliseconds = Math.round(seconds * 1000);
  let timer: NodeJS.Timeout | undefined;
  await new Promise<void>(done => {
    worker.on('error', () => done());
    worker.on('message', (message: PeerMessage) => {
      if (message.type === 'ready') {
        worker.postMessage(taskFor(problem, milliseconds));
        timer = setTimeout(done, milliseconds + FLATTENING);
      }
      const finish = message.output?.json?.finish;
      if (finish !== undefined) best = { ...best, finish };
      if (message.status === 'OPTIMAL_SOLUTION' || message.status === 'UNSATISFIABLE')
        best = { ...best, isProved: true };
      if (message.type === 'exit') done();
    });
    worker.postMessage({ wasmURL: join(folder, 'minizinc.wasm'), dataURL: join(folder, 'minizinc.data') });
  });
  clearTimeout(timer);
  await worker.terminate();
  return best;
}

interface PeerMessage {
  readonly type: string;
  readonly status?: string;
  readonly output?: { readonly json?: { readonly finish?: number } };
}

function taskFor(problem: SearchProblem, milliseconds: number) {
  const { activities, resources } = problem;
  const lag = lagsBetweenStarts(problem).map(([from, to, days]) => [from + 1, to + 1, days]);
  const data = {
    n: activities.length,
    resources: resources.length,
    arcs: lag.length,
    horizon: Math.min(problem.horizon, durationSum(problem)),
    duration: activities.map(activity => activity.duration),
    capacity: resources.map(resource => resource.capacity),
    demand: resources.map((_, r) => activities.map(activity => activity.demands[r] ?? 0)),
    lag,
  };
  const args = [
    '--solver',
    'chuffed',
    '-i',
    '-f',
    '--output-mode',
    'json',
    '--time-limit',
    String(milliseconds),
  ];
  return {
    jsonStream: true,
    files: { 'model.mzn': MODEL, 'data.json': JSON.stringify(data) },
    args: [...args, 'model.mzn', 'data.json'],
  };
}
