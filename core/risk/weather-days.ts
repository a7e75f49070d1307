import { at, byteAt, hashText, valueAt } from '../base';
import { scrambled } from './numeric/random-bits';
import type { WorkabilitySeries } from './prepared';

/** Whether a day of one trial is workable, in any order of asking, at the same answer each time. */
export type WorkableDay = (trial: number, day: number) => boolean;

/**
 * The days of a workability series as a two-state chain: the share of workable days of the month, and the
 * correlation of a day with the next. All series of a run read the same sea: a day fit for the more exacting
 * operation tends to be fit for the other. A day is found from the nearest earlier day that does not
 * depend on its own past, so no trial is walked from its beginning.
 * @param month month of each day number, 0 = January.
 * @source K. R. Gabriel, J. Neumann, Q. J. R. Meteorol. Soc. 88 (1962) 90-95 (Markov chain of daily weather);
 *   J. G. Propp, D. B. Wilson, Random Struct. Alg. 9 (1996) 223-252 (coupling from the past).
 */
export function workableDays(series: WorkabilitySeries, month: Uint8Array, seed: number): WorkableDay {
  const ofMonth = series.workable.map((_, m) => chances(series, m));
  const afterIdle = Float64Array.from(ofMonth, one => one.afterIdle);
  const afterWork = Float64Array.from(ofMonth, one => one.afterWork);
  const sea = hashText('weather', seed);
  return (trial, day) => {
    for (let back = day; back >= 0; back--) {
      const m = byteAt(month, back);
      const u = seaState(sea, trial, back);
      if (u < valueAt(afterIdle, m)) return true;
      if (u >= valueAt(afterWork, m)) return false;
    }
    return seaState(sea, trial, -1) < at(series.workable, byteAt(month, 0));
  };
}

/** Chances of a workable day in a month (0 = January): after an idle day, and after a workable one. */
export function chances(
  series: WorkabilitySeries,
  month: number,
): { readonly afterIdle: number; readonly afterWork: number } {
  const persistence = at(series.persistence, month);
  const afterIdle = at(series.workable, month) * (1 - persistence);
  return { afterIdle, afterWork: afterIdle + persistence };
}

/** A number from 0 to 1 that belongs to the seed, the trial and the day. */
function seaState(sea: number, trial: number, day: number): number {
  return (
    scrambled(scrambled(sea ^ Math.imul(trial + 1, 0x9e3779b1)) ^ Math.imul(day + 2, 0x85ebca77)) / 4294967296
  );
}
