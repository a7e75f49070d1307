import { at, valueAt } from '../base';
import type { Adjustment } from './adjustment';
import { ChunkCosts } from './chunk-costs';
import { chunkSchedule, type ScheduleChunk } from './chunk-schedule';
import { TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import type { MoneyColumns, PreparedRun } from './prepared';
import { samplerFor, type Sampler } from './sampler';
import { classSums, type ClassSums } from './screening';

/** One piece of work for a worker thread: plain data. */
export interface ChunkJob {
  readonly chunk: number;
  readonly adjustment: Adjustment;
  /** Whether the trials are summed up by the classes of every uncertainty as well. */
  readonly screens?: boolean;
}

/** What a chunk of trials gave: plain data and typed arrays, the same bits on every thread. */
export interface ChunkResult {
  readonly chunk: number;
  /** Trials in the order of their draws; a trial without a finite answer is NaN in every array. */
  readonly total: Float64Array;
  readonly finish: Float64Array;
  readonly cashNeed: Float64Array | undefined;
  /** 1 where an operation ended up in a later season. */
  readonly missedSeason: Uint8Array;
  /** By activity: trials in which it drives the finish. */
  readonly drives: Float64Array | undefined;
  /** By line: sum of the excess over the plan, and of excess times the excess of the total. */
  readonly lineExcess: Float64Array;
  readonly lineProduct: Float64Array;
  /** The trials by class of every uncertainty, where the job asks for it: see `screen`. */
  readonly classes: Float64Array | undefined;
}

/** Runs chunks of one plan in one thread. */
export interface TrialRunner {
  readonly run: (job: ChunkJob) => ChunkResult;
}

/** Makes a runner for one thread. Jobs of the same chunk one after the other share their draws and dates. */
export function trialRunner(prepared: PreparedRun, plan: TrialPlan): TrialRunner {
  const sampler = samplerFor(prepared, plan);
  const bench = { ...workbench(prepared, plan.seed), sumsOf: classSums(prepared, sampler.levels) };
  return { run: job => runChunk(prepared, sampler, bench, job) };
}

/** The columns of a chunk by activity, of which dates are made. */
interface DateColumns {
  readonly durations: readonly Float64Array[];
  readonly starts: readonly Float64Array[];
  readonly finishes: readonly Float64Array[];
  readonly waits: readonly Float64Array[];
}

/** Buffers of one thread. */
interface Workbench extends DateColumns {
  readonly schedule: ScheduleChunk;
  readonly tellsDriving: boolean;
  /** The dates of the first job of the chunk in hand: an activity keeps them where nothing before it changed. */
  readonly known: DateColumns & { chunk: number };
}

function workbench(prepared: PreparedRun, seed: number): Workbench {
  const columns = () => prepared.activities.map(() => new Float64Array(TRIALS_PER_CHUNK));
  const made = () => ({ durations: columns(), starts: columns(), finishes: columns(), waits: columns() });
  return { ...chunkSchedule(prepared, seed), ...made(), known: { chunk: -1, ...made() } };
}

function runChunk(
  prepared: PreparedRun,
  sampler: Sampler,
  bench: Workbench & { readonly sumsOf: ClassSums },
  job: ChunkJob,
): ChunkResult {
  const { n, events } = sampler.fill(job.chunk, job.adjustment);
  const durations = prepared.work({ n, inputs: sampler.inputs });
  for (const [i, column] of bench.durations.entries()) column.set(at(durations, i));
  for (const event of events) {
    for (const { column, values } of event.delays) add(at(bench.durations, column), values, n);
  }
  const isAsItIs = Object.keys(job.adjustment).length === 0;
  const times = scheduleTrials(bench, job.chunk, n, isAsItIs);
  const { durations: lasting, starts, finishes, waits } = bench;
  const batch = {
    n,
    inputs: sampler.inputs,
    durations: lasting,
    starts,
    finishes,
    waits,
    asksCash: isAsItIs,
  };
  const money = prepared.money(batch);
  const costs = new ChunkCosts(prepared, money, n);
  for (const event of events) for (const { column, values } of event.costs) costs.add(column, values);
  for (const id of job.adjustment.mitigated ?? [])
    costs.addMitigation(prepared.events.find(e => e.id === id));
  const cashNeed = isAsItIs ? withEvents(money, costs.total, n) : undefined;
  costs.dropBroken(times.finish, cashNeed);
  const { total } = costs;
  const classes = job.screens === true ? bench.sumsOf({ n, total, finish: times.finish }) : undefined;
  return { chunk: job.chunk, ...times, total, cashNeed, classes, ...costs.excess() };
}

/** The cash need grows as the total does by the events of the register: they fall where the money is spent. */
function withEvents(
  { cashNeed, total }: MoneyColumns,
  whole: Float64Array,
  n: number,
): Float64Array | undefined {
  return cashNeed?.slice(0, n).map((need, t) => need * (valueAt(whole, t) / valueAt(total, t)));
}

function add(column: Float64Array, values: Float64Array, n: number): void {
  for (let t = 0; t < n; t++) column[t] = valueAt(column, t) + valueAt(values, t);
}

function scheduleTrials(bench: Workbench, chunk: number, n: number, countsDriving: boolean) {
  const { schedule, tellsDriving, known, ...columns } = bench;
  const { durations, starts, finishes, waits } = columns;
  const isKnown = known.chunk === chunk;
  if (isKnown)
    for (const key of ['starts', 'finishes', 'waits'] as const) copyColumns(known[key], bench[key]);
  const stands = (i: number) => isKnown && isSame(durations[i], known.durations[i], n);
  const drives = countsDriving && tellsDriving ? new Float64Array(durations.length) : undefined;
  const [finish, missedSeason] = [new Float64Array(n), new Uint8Array(n)];
  schedule(chunk, { n, durations, starts, finishes, waits, finish, missedSeason, drives, stands });
  if (!isKnown) {
    known.chunk = chunk;
    for (const key of ['durations', 'starts', 'finishes', 'waits'] as const)
      copyColumns(bench[key], known[key]);
  }
  return { finish, missedSeason, drives };
}

function copyColumns(from: readonly Float64Array[], to: readonly Float64Array[]): void {
  for (const [i, column] of to.entries()) column.set(at(from, i));
}

function isSame(a: Float64Array | undefined, b: Float64Array | undefined, n: number): boolean {
  if (a === undefined || b === undefined) return false;
  for (let t = 0; t < n; t++) if (a[t] !== b[t]) return false;
  return true;
}
