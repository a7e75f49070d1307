import { expect, it } from 'vitest';
import fc from 'fast-check';
import { schedule, verifySchedule } from '../../../core/scheduling';
import { exhaustiveFinish } from './exhaustive';
import { randomProblem } from './random-problems';

it('300 random small problems with every kind of rule are solved to the optimum of an exhaustive search', () => {
  let compared = 0;
  const sample = fc.sample(randomProblem(5, 4), { numRuns: 420, seed: 20270301 });
  for (const problem of sample) {
    if (compared === 300) break;
    const least = exhaustiveFinish(problem, 45);
    const result = schedule(problem, { schedules: 2000, seed: 1 });
    if (least === undefined) {
      expect(result.status, JSON.stringify(problem)).toBe('infeasible');
      continue;
    }
    compared++;
    expect(result.calendarDays, JSON.stringify(problem)).toBe(least);
    expect(result.lowerBoundDays ?? 0).toBeLessThanOrEqual(least);
    expect(verifySchedule(problem, result)).toEqual([]);
  }
  expect(compared).toBe(300);
});
