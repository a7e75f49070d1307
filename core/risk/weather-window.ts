import type { WeatherOperation } from './prepared';
import type { WorkableDay } from './weather-days';

/**
 * The first day, not before `earliest`, on which the season is open and from which on the operation has its
 * consecutive workable days.
 * @param earliest day number; a part of a day counts as the next whole day.
 * @returns a day number, or NaN when the horizon ends first.
 */
export function firstWindow(
  operation: WeatherOperation,
  isWorkable: WorkableDay,
  trial: number,
  earliest: number,
  horizon: number,
): number {
  let start = Math.ceil(earliest);
  let run = 0;
  for (let day = start; day < horizon; day++) {
    if (run === 0 && operation.open !== undefined && operation.open[day] !== 1) {
      start = day + 1;
    } else if (isWorkable(trial, day)) {
      run++;
      if (run >= operation.windowDays) return start;
    } else {
      start = day + 1;
      run = 0;
    }
  }
  return Number.NaN;
}
