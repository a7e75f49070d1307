import { hashText } from '../base';
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
  const afterIdle = Float64Array.from(
    series.workable,
    (share, m) => share * (1 - (series.persistence[m] ?? Number.NaN)),
  );
  const afterWork = Float64Array.from(
    series.workable,
    (_, m) => (afterIdle[m] ?? 0) + (series.persistence[m] ?? Number.NaN),
  );
  const sea = hashText('weather', seed);
  return (trial, day) => {
    for (let back = day; back >= 0; back--) {
      const m = month[back] ?? 0;
      const u = seaState(sea, trial, back);
      if (u < (afterIdle[m] ?? 0)) return true;
      if (u >= (afterWork[m] ?? 1)) return false;
    }
    return seaState(sea, trial, -1) < (series.workable[month[0] ?? 0] ?? 0);
  };
}

/** A number from 0 to 1 that belongs to the seed, the trial and the day. */
function seaState(sea: number, trial: number, day: number): number {
  return (
    scrambled(scrambled(sea ^ Math.imul(trial + 1, 0x9e3779b1)) ^ Math.imul(day + 2, 0x85ebca77)) / 4294967296
  );
}
