import { at, valueAt, byteAt } from '../base';
import { TRIALS_PER_CHUNK } from './latin-hypercube';
import type { ChunkDates, ChunkScheduler, PreparedRun, StartGate, TrialScheduler } from './prepared';
import { startsLate, trialSchedule, watch, type TrialDates, type Watched } from './weather-schedule';
import { firstWindow } from './weather-window';

/** The dates of a chunk, with what the weather made of them. */
export interface ScheduledChunk extends Pick<
  ChunkDates,
  'n' | 'durations' | 'starts' | 'finishes' | 'finish' | 'stands'
> {
  /** Calendar days waited for a weather window, by activity. */
  readonly waits: readonly Float64Array[];
  /** Filled with 1 where an operation ends up in a later season than planned. */
  readonly missedSeason: Uint8Array;
  /** By activity: filled with in how many trials it drives the finish; absent when nobody asks. */
  readonly drives: Float64Array | undefined;
}

/** Schedules one chunk of trials. */
export type ScheduleChunk = (chunk: number, dates: ScheduledChunk) => void;

/** The way to schedule chunks of a run, and whether it can tell what drives the finish. */
export function chunkSchedule(
  prepared: PreparedRun,
  seed: number,
): { readonly schedule: ScheduleChunk; readonly tellsDriving: boolean } {
  const { scheduler } = prepared;
  if ('chunk' in scheduler)
    return {
      schedule: atOnce(prepared, scheduler, seed),
      tellsDriving: scheduler.countDriving !== undefined,
    };
  return {
    schedule: oneByOne(prepared, scheduler, seed),
    tellsDriving: scheduler.drivesFinish !== undefined,
  };
}

function atOnce(prepared: PreparedRun, scheduler: ChunkScheduler, seed: number): ScheduleChunk {
  const { weather } = prepared;
  const watched = (weather?.operations ?? []).map(o => watch(prepared, o, seed));
  const horizon = weather?.month.length ?? 0;
  return (chunk, dates) => {
    const gates = new Map(watched.map(w => [w.at, gateOf(w, horizon, chunk * TRIALS_PER_CHUNK, dates)]));
    const asked: ChunkDates = { ...dates, gates };
    scheduler.chunk(asked);
    dates.missedSeason.fill(0);
    for (const w of watched) {
      const start = at(dates.starts, w.at);
      for (let t = 0; t < dates.n; t++)
        if (startsLate(w.operation, valueAt(start, t))) dates.missedSeason[t] = 1;
    }
    if (dates.drives !== undefined) scheduler.countDriving?.(asked, dates.drives);
  };
}

/** An operation waits until it stands at the head of a window of weather in an open season. */
function gateOf(
  { at: place, operation, isWorkable }: Watched,
  horizon: number,
  firstTrial: number,
  { n, waits }: ScheduledChunk,
): StartGate {
  const waited = at(waits, place);
  return {
    begin: () => {
      waited.fill(0, 0, n);
    },
    startOf: (trial, earliest) => {
      const window = firstWindow(operation, isWorkable, firstTrial + trial, earliest, horizon);
      waited[trial] = valueAt(waited, trial) + window - earliest;
      return window;
    },
  };
}

function oneByOne(prepared: PreparedRun, scheduler: TrialScheduler, seed: number): ScheduleChunk {
  const schedule = trialSchedule(prepared, scheduler, seed);
  const count = prepared.activities.length;
  const row = () => new Float64Array(count);
  const [days, flags] = [row(), new Uint8Array(count)];
  const trial: TrialDates = { starts: row(), finishes: row(), waits: row(), missedSeason: false };
  return (chunk, dates) => {
    for (let t = 0; t < dates.n; t++) {
      for (const [i, column] of dates.durations.entries()) days[i] = valueAt(column, t);
      dates.finish[t] = schedule(chunk * TRIALS_PER_CHUNK + t, days, trial);
      dates.missedSeason[t] = trial.missedSeason ? 1 : 0;
      for (const key of ['starts', 'finishes', 'waits'] as const) scatter(trial[key], t, dates[key]);
      if (dates.drives === undefined || !Number.isFinite(dates.finish[t])) continue;
      scheduler.drivesFinish?.(flags);
      for (let i = 0; i < count; i++) dates.drives[i] = valueAt(dates.drives, i) + byteAt(flags, i);
    }
  };
}

function scatter(row: Float64Array, t: number, columns: readonly Float64Array[]): void {
  for (const [i, column] of columns.entries()) column[t] = valueAt(row, i);
}
