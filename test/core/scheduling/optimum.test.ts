import { expect, it } from 'vitest';
import fc from 'fast-check';
import { schedule, verifySchedule, type ScheduleProblem } from '../../../core/scheduling';
import { exhaustiveFinish } from './exhaustive';
import { randomProblem } from './random-problems';

/** Compares the first problems that have a schedule, and on the way all that have none. */
function compare(
  problems: readonly ScheduleProblem[],
  wanted: number,
  days = 45,
): { solved: number; without: number; proved: number } {
  const counts = { solved: 0, without: 0, proved: 0 };
  for (const problem of problems) {
    if (counts.solved === wanted) break;
    const least = exhaustiveFinish(problem, days);
    const result = schedule(problem, { schedules: 2000, seed: 1 });
    if (least === undefined) {
      // Nothing fits into the days tried: either nothing ever does, or only later.
      const isLater = (result.calendarDays ?? 0) > days;
      if (!isLater) counts.without++;
      expect(isLater ? 'not-found' : result.status, JSON.stringify(problem)).toMatch(/infeasible|not-found/);
      if (result.status === 'infeasible') counts.proved++;
      continue;
    }
    counts.solved++;
    expect(result.calendarDays, JSON.stringify(problem)).toBe(least);
    expect(result.lowerBoundDays ?? 0).toBeLessThanOrEqual(least);
    expect(verifySchedule(problem, result)).toEqual([]);
  }
  return counts;
}

it('300 random small problems with every kind of rule are solved to the optimum of an exhaustive search', () => {
  const problems = fc.sample(randomProblem(5, 4), { numRuns: 420, seed: 20270301 });
  expect(compare(problems, 300).solved).toBe(300);
}, 240_000);

it('so are 150 with most lags too; those without a schedule get none, nine in ten with proof', () => {
  const problems = fc.sample(randomProblem(4, 3, true), { numRuns: 900, seed: 5 });
  const { solved, without, proved } = compare(problems, 150, 26);
  expect(solved).toBe(150);
  expect(without).toBeGreaterThan(20);
  expect(proved / without).toBeGreaterThan(0.9);
}, 240_000);

it('so are 100 whose work may also lie only inside windows of days', () => {
  const problems = fc.sample(randomProblem(4, 4, false, true), { numRuns: 220, seed: 11 });
  expect(
    problems.flatMap(one => one.activities).filter(one => one.windows !== undefined).length,
  ).toBeGreaterThan(100);
  expect(compare(problems, 100).solved).toBe(100);
}, 240_000);
