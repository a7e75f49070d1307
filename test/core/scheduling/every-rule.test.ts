import { expect, it } from 'vitest';
import fc from 'fast-check';
import { checkProblem, schedule, verifySchedule } from '../../../core/scheduling';
import { randomProblem } from './random-problems';

it('every schedule of a random problem passes the day-by-day check, and the same seed gives the same schedule', () => {
  let [tried, scheduled] = [0, 0];
  fc.assert(
    fc.property(randomProblem(14, 6), problem => {
      tried++;
      expect(checkProblem(problem)).toEqual([]);
      const result = schedule(problem, { schedules: 60, seed: 3 });
      if (result.status === 'infeasible') return;
      expect(result.status).toMatch(/optimal|feasible/);
      expect(verifySchedule(problem, result)).toEqual([]);
      expect(schedule(problem, { schedules: 60, seed: 3 })).toEqual(result);
      scheduled++;
    }),
    { numRuns: 300 },
  );
  expect(scheduled).toBeGreaterThan(0.6 * tried);
});
