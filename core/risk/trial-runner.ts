import type { Adjustment } from './adjustment';
import { ChunkCosts } from './chunk-costs';
import { TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import type { PreparedRun } from './prepared';
import { samplerFor, type Sampler } from './sampler';
import { trialSchedule, type TrialDates, type TrialSchedule } from './weather-schedule';

/** One piece of work for a worker thread: plain data. */
export interface ChunkJob {
  readonly chunk: number;
  readonly adjustment: Adjustment;
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
}

/** Runs chunks of one plan in one thread. */
export interface TrialRunner {
  run(job: ChunkJob): ChunkResult;
}

/** Makes a runner for one thread. Jobs of the same chunk one after the other share their draws. */
export function trialRunner(prepared: PreparedRun, plan: TrialPlan): TrialRunner {
  const sampler = samplerFor(prepared, plan);
  const bench = workbench(prepared, plan.seed);
  return { run: job => runChunk(prepared, sampler, bench, job) };
}

/** Buffers for the dates of a chunk, by activity and then by trial. */
interface Workbench {
  readonly schedule: TrialSchedule;
  readonly dates: TrialDates;
  readonly trialDurations: Float64Array;
  readonly flags: Uint8Array;
  readonly durations: readonly Float64Array[];
  readonly starts: readonly Float64Array[];
  readonly finishes: readonly Float64Array[];
  readonly waits: readonly Float64Array[];
  /** The first job of the chunk in hand: its trials are scheduled once, and again only where durations differ. */
  readonly known: Known;
}

interface Known {
  chunk: number;
  readonly durations: readonly Float64Array[];
  readonly starts: readonly Float64Array[];
  readonly finishes: readonly Float64Array[];
  readonly waits: readonly Float64Array[];
  readonly finish: Float64Array;
  readonly missedSeason: Uint8Array;
}

function workbench(prepared: PreparedRun, seed: number): Workbench {
  const count = prepared.activities.length;
  const columns = () => prepared.activities.map(() => new Float64Array(TRIALS_PER_CHUNK));
  return {
    schedule: trialSchedule(prepared, seed),
    dates: {
      starts: new Float64Array(count),
      finishes: new Float64Array(count),
      waits: new Float64Array(count),
      missedSeason: false,
    },
    trialDurations: new Float64Array(count),
    flags: new Uint8Array(count),
    durations: columns(),
    starts: columns(),
    finishes: columns(),
    waits: columns(),
    known: {
      chunk: -1,
      durations: columns(),
      starts: columns(),
      finishes: columns(),
      waits: columns(),
      finish: new Float64Array(TRIALS_PER_CHUNK),
      missedSeason: new Uint8Array(TRIALS_PER_CHUNK),
    },
  };
}

function runChunk(prepared: PreparedRun, sampler: Sampler, bench: Workbench, job: ChunkJob): ChunkResult {
  const { n, events } = sampler.fill(job.chunk, job.adjustment);
  const durations = prepared.work({ n, inputs: sampler.inputs });
  for (const [i, column] of bench.durations.entries()) column.set(durations[i] ?? column);
  for (const event of events) {
    for (const { column, values } of event.delays) add(bench.durations[column], values, n);
  }
  const times = scheduleTrials(prepared, bench, job.chunk, n);
  const { durations: lasting, starts, finishes, waits } = bench;
  const money = prepared.money({ n, inputs: sampler.inputs, durations: lasting, starts, finishes, waits });
  const costs = new ChunkCosts(prepared, money, n);
  for (const event of events) for (const { column, values } of event.costs) costs.add(column, values);
  for (const id of job.adjustment.mitigated ?? [])
    costs.addMitigation(prepared.events.find(e => e.id === id));
  const cashNeed = money.cashNeed?.slice(0, n);
  costs.dropBroken(times.finish, cashNeed);
  return { chunk: job.chunk, ...times, total: costs.total, cashNeed, ...costs.excess() };
}

function add(column: Float64Array | undefined, values: Float64Array, n: number): void {
  if (column !== undefined)
    for (let t = 0; t < n; t++) column[t] = (column[t] ?? Number.NaN) + (values[t] ?? Number.NaN);
}

function scheduleTrials(prepared: PreparedRun, bench: Workbench, chunk: number, n: number) {
  const { scheduler } = prepared;
  const { dates, trialDurations, flags, schedule, known } = bench;
  const finish = new Float64Array(n);
  const missedSeason = new Uint8Array(n);
  const drives = scheduler.drivesFinish === undefined ? undefined : new Float64Array(flags.length);
  const isKnown = known.chunk === chunk && drives === undefined;
  for (let t = 0; t < n; t++) {
    if (isKnown && isSame(bench.durations, known.durations, t)) {
      recall(bench, t);
      finish[t] = known.finish[t] ?? Number.NaN;
      missedSeason[t] = known.missedSeason[t] ?? 0;
      continue;
    }
    gather(bench.durations, t, trialDurations);
    finish[t] = schedule(chunk * TRIALS_PER_CHUNK + t, trialDurations, dates);
    scatter(dates.starts, t, bench.starts);
    scatter(dates.finishes, t, bench.finishes);
    scatter(dates.waits, t, bench.waits);
    if (dates.missedSeason) missedSeason[t] = 1;
    if (drives !== undefined && Number.isFinite(finish[t])) {
      scheduler.drivesFinish?.(flags);
      for (let i = 0; i < flags.length; i++) drives[i] = (drives[i] ?? 0) + (flags[i] ?? 0);
    }
  }
  if (known.chunk !== chunk) remember(bench, chunk, finish, missedSeason);
  return { finish, missedSeason, drives };
}

function remember(bench: Workbench, chunk: number, finish: Float64Array, missedSeason: Uint8Array): void {
  const { known } = bench;
  known.chunk = chunk;
  for (const key of ['durations', 'starts', 'finishes', 'waits'] as const)
    for (const [i, column] of known[key].entries()) column.set(bench[key][i] ?? column);
  known.finish.set(finish);
  known.missedSeason.set(missedSeason);
}

function recall(bench: Workbench, t: number): void {
  for (const key of ['starts', 'finishes', 'waits'] as const) copyTrial(bench.known[key], bench[key], t);
}

function copyTrial(from: readonly Float64Array[], to: readonly Float64Array[], t: number): void {
  for (let i = 0; i < to.length; i++) {
    const column = to[i];
    if (column !== undefined) column[t] = from[i]?.[t] ?? Number.NaN;
  }
}

function isSame(a: readonly Float64Array[], b: readonly Float64Array[], t: number): boolean {
  for (let i = 0; i < a.length; i++) if (a[i]?.[t] !== b[i]?.[t]) return false;
  return true;
}

function gather(columns: readonly Float64Array[], t: number, row: Float64Array): void {
  for (let i = 0; i < row.length; i++) row[i] = columns[i]?.[t] ?? Number.NaN;
}

function scatter(row: Float64Array, t: number, columns: readonly Float64Array[]): void {
  for (let i = 0; i < row.length; i++) {
    const column = columns[i];
    if (column !== undefined) column[t] = row[i] ?? Number.NaN;
  }
}
