import { describe, expect, it } from 'vitest';
import { expectedWait, firstWindow, workableDays } from '../../../core/risk';

const flat = (share: number, persistence: number) => ({
  id: 'sea',
  title: 'Sea',
  workable: Array.from({ length: 12 }, () => share),
  persistence: Array.from({ length: 12 }, () => persistence),
});
const march = Array.from({ length: 200 }, () => 2);

describe('mean wait for a window of workable days', () => {
  it('of one day, without memory, is the mean number of failures before the first success', () => {
    // Geometric distribution: (1 - p) / p; the tail beyond 150 days is nothing.
    expect(expectedWait({ series: flat(0.25, 0), days: 1, month: march }, 150)).toBeCloseTo(3, 9);
  });
  it('of k days on end, without memory, is the mean time to a run of k successes less k', () => {
    // W. Feller, An introduction to probability theory, vol. 1, ch. XIII.7: (1 - p^k) / ((1 - p) p^k) trials.
    const [p, k] = [0.7, 4];
    const trials = (1 - p ** k) / ((1 - p) * p ** k);
    expect(expectedWait({ series: flat(p, 0), days: k, month: march }, 190)).toBeCloseTo(trials - k, 6);
  });
  it('never counts more than the most, and is unknown when the months do not reach', () => {
    expect(expectedWait({ series: flat(0, 0), days: 3, month: march }, 20)).toBe(20);
    expect(expectedWait({ series: flat(0.5, 0.5), days: 3, month: [2, 2] }, 20)).toBeNaN();
  });
  it('is what the drawn weather of many trials waits on average, months and memory as they are', () => {
    const months = Array.from({ length: 120 }, (_, day) => (day < 31 ? 0 : day < 59 ? 1 : 2));
    const series = { ...flat(0.5, 0.6), workable: [0.4, 0.55, 0.7, ...Array.from({ length: 9 }, () => 0.5)] };
    const isWorkable = workableDays(series, Uint8Array.from(months), 7);
    const operation = {
      activity: 'tow',
      series: 'sea',
      windowDays: 4,
      open: Uint8Array.from(months, () => 1),
    };
    const [first, most, trials] = [20, 30, 20_000];
    let sum = 0;
    for (let trial = 0; trial < trials; trial++) {
      const day = firstWindow(operation, isWorkable, trial, first, months.length);
      sum += Number.isNaN(day) ? most : Math.min(most, day - first);
    }
    const exact = expectedWait({ series, days: 4, month: months.slice(first) }, most);
    // Standard error of the mean of 20,000 waits of at most 30 days: below 0.08; four of them.
    expect(Math.abs(sum / trials - exact)).toBeLessThan(0.3);
  });
});
