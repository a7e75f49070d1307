import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { schedule, trialScheduler, verifySchedule, type ScheduleProblem } from '../../../core/scheduling';
import { isoOf, dayOf } from '../../../core/calendar';
import { after, problemOf, work } from './problems';

const problem = (cut: number): ScheduleProblem =>
  problemOf(
    [
      work('cut', cut, { uses: { crew: 1 } }),
      work('clean', 2, { uses: { crew: 1 } }),
      work('tow', 3, { calendar: 'all', consecutive: { weatherDays: 0 } }),
    ],
    [after('cut', 'clean'), after('clean', 'tow', { lag: 1, lagUnit: 'day' })],
    { resources: [{ id: 'crew', title: 'Crew', capacity: 1 }] },
  );
const run = (durations: readonly number[], notBefore: readonly number[] = [0, 0, 0]) => {
  const trials = trialScheduler(problem(3), { schedules: 50, seed: 1 });
  const [starts, finishes] = [new Float64Array(3), new Float64Array(3)];
  const finish = trials?.decode(Float64Array.from(durations), Float64Array.from(notBefore), starts, finishes);
  return { finish, starts: [...starts], finishes: [...finishes] };
};

describe('trials', () => {
  it('with the planned durations give the plan', () => {
    // Cut Monday to Wednesday, clean Thursday and Friday, a calendar day between, tow from Sunday 7 March.
    expect(run([3, 2, 3])).toEqual({ finish: 9, starts: [0, 3, 6], finishes: [3, 5, 9] });
  });
  it('longer work pushes what follows over the weekend; fractions of a day count as whole days', () => {
    expect(run([3.4, 2, 3])).toEqual({ finish: 12, starts: [0, 4, 9], finishes: [4, 8, 12] });
  });
  it('a tow held back by weather starts no earlier, and a second trial has forgotten it', () => {
    expect(run([3, 2, 3], [0, 0, 20]).starts).toEqual([0, 3, 20]);
    expect(run([3, 2, 3]).starts).toEqual([0, 3, 6]);
  });
  it('any durations give a schedule that passes the day-by-day check of that problem', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), cut => {
        const { starts, finishes } = run([cut, 2, 3]);
        const trial = problem(cut);
        const result = schedule(trial, { schedules: 50, seed: 1 });
        const iso = (moment: number) => isoOf(dayOf('2027-03-01') + moment);
        const activities = result.activities.map((a, i) => ({
          ...a,
          start: iso(starts[i] ?? 0),
          finish: iso((finishes[i] ?? 0) - 1),
        }));
        expect(verifySchedule(trial, { ...result, activities })).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });
  it('a problem without a schedule has no trials', () => {
    expect(
      trialScheduler(problemOf([work('A', 1, { deadline: '2027-02-01' })]), { schedules: 10, seed: 1 }),
    ).toBeUndefined();
  });
});
