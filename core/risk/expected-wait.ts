import { at } from '../base';
import type { WorkabilitySeries } from './prepared';
import { chances } from './weather-days';

/** An operation that wants so many workable days on end, from a month on. */
export interface AwaitedWindow {
  readonly series: WorkabilitySeries;
  /** Workable days on end that it needs. */
  readonly days: number;
  /** Month of each day from the first day of waiting on, 0 = January; its length is how far is looked. */
  readonly month: readonly number[];
}

/**
 * Mean days waited for a window, none beyond `most` counted: the sum over w up to `most` of the chance that no window has
 * begun within w days. The days are the two-state chain that the trials draw from, here followed exactly.
 * @returns calendar days, 0 to `most`; NaN when the months do not reach that far.
 */
export function expectedWait({ series, days, month }: AwaitedWindow, most: number): number {
  if (month.length < most + days - 1) return Number.NaN;
  /** Chance of each run of workable days up to today while no window is full: 0, 1, … days. */
  let runs: number[] = [];
  let waited = 0;
  month.slice(0, most + days - 1).forEach((m, day) => {
    const { afterIdle, afterWork } = chances(series, m);
    const share = at(series.workable, m);
    const next = Array.from({ length: days }, () => 0);
    const before = day === 0 ? [1] : runs;
    before.forEach((chance, run) => {
      const works = day === 0 ? share : run === 0 ? afterIdle : afterWork;
      next[0] = at(next, 0) + chance * (1 - works);
      if (run + 1 < days) next[run + 1] = at(next, run + 1) + chance * works;
    });
    runs = next;
    // The window that would have begun `days - 1` days ago is not full: one day more is waited.
    if (day >= days - 1) waited += runs.reduce((sum, chance) => sum + chance, 0);
  });
  return waited;
}
