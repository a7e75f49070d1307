import { describe, expect, it } from 'vitest';
import {
  firstWindow,
  simulate,
  workableDays,
  type WeatherModel,
  type WorkabilitySeries,
} from '../../../core/risk';
import { prepare } from './small-project';

/** Two-sided 99 % of the standard normal: many checks stand side by side, so 95 % would miss one in twenty. */
const WITHIN = 2.576;

const all = (value: number): number[] => new Array<number>(12).fill(value);
const series = (workable: number[], persistence: number[], id = 'tow'): WorkabilitySeries => ({
  id,
  title: id,
  workable,
  persistence,
});
const DAYS = 400;
/** Thirty-day months are enough for a chain. */
const month = Uint8Array.from({ length: DAYS }, (_, day) => Math.floor(day / 30) % 12);

describe('the days of a workability series', () => {
  it('are workable in the share of the month and persist with its correlation', () => {
    const [share, persistence] = [0.6, 0.7];
    const isWorkable = workableDays(series(all(share), all(persistence)), month, 11);
    let [work, both] = [0, 0];
    const trials = 400_000;
    for (let trial = 0; trial < trials; trial++) {
      const [today, tomorrow] = [isWorkable(trial, 200), isWorkable(trial, 201)];
      work += today ? 1 : 0;
      both += today && tomorrow ? 1 : 0;
    }
    // A two-state chain: the next day is workable with share + persistence (1 - share) after a workable one.
    const next = share + persistence * (1 - share);
    expect(Math.abs(work / trials - share)).toBeLessThan(WITHIN * Math.sqrt((share * (1 - share)) / trials));
    expect(Math.abs(both / work - next)).toBeLessThan(WITHIN * Math.sqrt((next * (1 - next)) / work));
  });

  it('follow the share of each month', () => {
    const byMonth = Array.from({ length: 12 }, (_, m) => (m === 5 ? 0.9 : 0.2));
    const isWorkable = workableDays(series(byMonth, all(0.5)), month, 3);
    const shareOn = (day: number) =>
      Array.from({ length: 4000 }, (_, t) => isWorkable(t, day)).filter(Boolean).length / 4000;
    expect([shareOn(175) > 0.85, shareOn(120) < 0.25]).toEqual([true, true]);
  });

  it('answer the same whatever is asked before', () => {
    const isWorkable = workableDays(series(all(0.5), all(0.8)), month, 4);
    const forwards = Array.from({ length: 100 }, (_, day) => isWorkable(7, day));
    const backwards = Array.from({ length: 100 }, (_, day) => isWorkable(7, 99 - day)).reverse();
    expect(backwards).toEqual(forwards);
  });

  it('fit for the more exacting operation are fit for the other', () => {
    const sinking = workableDays(series(all(0.4), all(0.6)), month, 4);
    const towing = workableDays(series(all(0.7), all(0.6)), month, 4);
    for (let t = 0; t < 500; t++) if (sinking(t, 100)) expect([t, towing(t, 100)]).toEqual([t, true]);
  });
});

describe('a window of consecutive workable days', () => {
  const days = '110111100111110';
  const isWorkable = (_: number, day: number) => days[day] === '1';
  const find = (windowDays: number, earliest: number, open?: Uint8Array) =>
    firstWindow(
      { activity: 'a', series: 's', windowDays, ...(open === undefined ? {} : { open }) },
      isWorkable,
      0,
      earliest,
      days.length,
    );

  it('begins on the first day from which all its days are workable', () => {
    expect([find(1, 0), find(2, 0), find(3, 0), find(5, 0), find(4, 4)]).toEqual([0, 0, 3, 9, 9]);
  });

  it('begins on a whole day, and not before the earliest', () => {
    expect([find(2, 0.2), find(2, 4.5), find(1, 2)]).toEqual([3, 5, 3]);
  });

  it('waits for the season to open', () => {
    expect(
      find(
        2,
        0,
        Uint8Array.from(days, (_, day) => (day >= 10 ? 1 : 0)),
      ),
    ).toBe(10);
  });

  it('is not found beyond the horizon', () => {
    expect(find(6, 0)).toBeNaN();
  });
});

describe('weather in the simulation', () => {
  const model = (workable: number, extra: object = {}): WeatherModel => ({
    month,
    series: [series(all(workable), all(0))],
    operations: [{ activity: 'tow', series: 'tow', windowDays: 1, ...extra }],
  });
  const project = (weather: WeatherModel) =>
    prepare({
      ranges: {},
      weather,
      activities: {
        clean: { days: () => 10 },
        tow: { days: () => 4, after: ['clean'] },
        sink: { days: () => 1, after: ['tow'] },
      },
      lines: { standby: (_, _finish, wait) => 1000 * wait('tow') },
    });

  it('without persistence waits the mean of a geometric law, pays for it, and delays what follows', () => {
    const result = simulate(project(model(0.25)), { trials: 20_000, seed: 2 });
    // Days waited before the first success of probability p: mean (1 - p) / p, variance (1 - p) / p^2.
    const half = WITHIN * Math.sqrt(0.75 / 0.0625 / 20_000);
    expect(Math.abs((result?.finish.mean ?? 0) - 15 - 3)).toBeLessThan(half);
    expect(Math.abs((result?.cost.mean ?? 0) - 3000)).toBeLessThan(1000 * half);
    expect(result?.withoutAnswer).toBe(0);
  });

  it('always fit changes nothing', () => {
    const result = simulate(project(model(1)), { trials: 500, seed: 2 });
    expect([result?.finish.mean, result?.cost.mean, result?.anotherSeason]).toEqual([15, 0, 0]);
  });

  it('counts the runs that need another season', () => {
    const open = Uint8Array.from({ length: DAYS }, (_, day) => (day < 12 || day >= 200 ? 1 : 0));
    const ofDay = Int16Array.from({ length: DAYS }, (_, day) => (day < 200 ? 1 : 2));
    const result = simulate(project(model(0.5, { open, season: { ofDay, planned: 1 } })), {
      trials: 20_000,
      seed: 2,
    });
    // Days 10 and 11 are the chances left of the season: both fail in a quarter of the runs.
    expect(Math.abs((result?.anotherSeason ?? 0) - 0.25)).toBeLessThan(
      WITHIN * Math.sqrt((0.25 * 0.75) / 20_000),
    );
  });

  it('without any window inside the horizon has no answer, which is counted', () => {
    expect(simulate(project(model(0)), { trials: 250, seed: 2 })?.withoutAnswer).toBe(250);
  });
});
