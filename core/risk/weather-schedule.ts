import { BugError, valueAt } from '../base';
import type { PreparedRun, TrialScheduler, WeatherOperation } from './prepared';
import { workableDays, type WorkableDay } from './weather-days';
import { firstWindow } from './weather-window';

/** The dates of one trial. */
export interface TrialDates {
  readonly starts: Float64Array;
  readonly finishes: Float64Array;
  /** Calendar days waited for a weather window, by activity. */
  readonly waits: Float64Array;
  /** Whether an operation ends up in a later season than planned. */
  missedSeason: boolean;
}

/** Schedules one trial; the answer is the day number of the project's finish, NaN when there is none. */
export type TrialSchedule = (trial: number, durations: Float64Array, dates: TrialDates) => number;

export interface Watched {
  readonly at: number;
  readonly operation: WeatherOperation;
  readonly isWorkable: WorkableDay;
}

/** A schedule is decoded again at most so often while operations move to their windows. */
const MOST_PASSES = 60;

/** The schedule of a trial with its weather: the earliest operation outside a window waits for
 * its window, and the rest is scheduled again, until all stand in one. */
export function trialSchedule(prepared: PreparedRun, scheduler: TrialScheduler, seed: number): TrialSchedule {
  const { weather } = prepared;
  const notBefore = new Float64Array(prepared.activities.length);
  if (weather === undefined) {
    return (_, durations, dates) => {
      dates.missedSeason = false;
      return scheduler.decode(durations, notBefore, dates.starts, dates.finishes);
    };
  }
  const horizon = weather.month.length;
  const watched = weather.operations.map(o => watch(prepared, o, seed));
  return (trial, durations, dates) => {
    notBefore.fill(0);
    dates.waits.fill(0);
    dates.missedSeason = false;
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      const finish = scheduler.decode(durations, notBefore, dates.starts, dates.finishes);
      const next = firstOutside(watched, trial, horizon, dates.starts);
      if (next === undefined) {
        dates.missedSeason = watched.some(w => isLaterSeason(w, dates.starts));
        return finish;
      }
      if (Number.isNaN(next.window)) return Number.NaN;
      dates.waits[next.at] = valueAt(dates.waits, next.at) + next.window - next.start;
      notBefore[next.at] = next.window;
    }
    return Number.NaN;
  };
}

/** The earliest operation that stands outside a window, with the window it has to wait for. */
function firstOutside(watched: readonly Watched[], trial: number, horizon: number, starts: Float64Array) {
  let first: { at: number; start: number; window: number } | undefined;
  for (const { at, operation, isWorkable } of watched) {
    const start = valueAt(starts, at);
    if (first !== undefined && first.start <= start) continue;
    const window = firstWindow(operation, isWorkable, trial, start, horizon);
    if (window !== start) first = { at, start, window };
  }
  return first;
}

function isLaterSeason({ at, operation }: Watched, starts: Float64Array): boolean {
  return startsLate(operation, valueAt(starts, at));
}

/** Whether an operation that starts on a day starts in a later season than planned. */
export function startsLate({ season }: WeatherOperation, day: number): boolean {
  if (season === undefined) return false;
  return (season.ofDay[Math.floor(day)] ?? season.planned) > season.planned;
}

/** An operation with its place among the activities and the weather it reads. */
export function watch(prepared: PreparedRun, operation: WeatherOperation, seed: number): Watched {
  const at = prepared.activities.indexOf(operation.activity);
  const series = prepared.weather?.series.find(s => s.id === operation.series);
  if (at < 0 || series === undefined || prepared.weather === undefined) {
    throw new BugError(
      `the weather operation ${operation.activity} has no activity or no series ${operation.series}`,
    );
  }
  return { at, operation, isWorkable: workableDays(series, prepared.weather.month, seed) };
}
