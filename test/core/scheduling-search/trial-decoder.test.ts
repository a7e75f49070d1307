import { describe, expect, it } from 'vitest';
import { searchSchedule, TrialDecoder } from '../../../core/scheduling/search';
import { randomProblem } from './random-problem';
import { scheduleFaults } from './schedule-faults';

describe('the trial decoder', () => {
  for (const ingredients of [{ activities: 20 }, { activities: 20, hasCalendars: true, hasKinds: true }]) {
    it(`schedules other durations in the given order, and keeps every condition (${Object.keys(ingredients).length} ingredients)`, () => {
      const problem = randomProblem(5, ingredients);
      const decoder = new TrialDecoder(problem);
      const list = decoder.listBy(
        searchSchedule(problem, { schedules: 200, seed: 1 }).starts ?? new Int32Array(20),
      );
      for (let stretch = 0; stretch < 20; stretch++) {
        const durations = problem.activities.map(({ duration }, i) => duration + ((i + stretch) % 5));
        const trial = decoder.decode(list, durations);
        const activities = problem.activities.map((activity, i) => ({
          ...activity,
          duration: durations[i] ?? 0,
        }));
        expect(scheduleFaults({ ...problem, activities }, trial.starts)).toEqual([]);
        expect(trial.finish).toBe(Math.max(...trial.finishes));
      }
    });
  }

  it('never finishes earlier than the optimum of the same durations', () => {
    const problem = randomProblem(9, { activities: 8 });
    const best = searchSchedule(problem, { schedules: 20_000, seed: 1 });
    const decoder = new TrialDecoder(problem);
    const list = decoder.listBy(best.starts ?? new Int32Array(8));
    expect(
      decoder.decode(
        list,
        problem.activities.map(activity => activity.duration),
      ).finish,
    ).toBe(best.finish);
  });

  it('makes room by itself when a trial is far longer than the plan', () => {
    const problem = randomProblem(5, { activities: 10 });
    const decoder = new TrialDecoder(problem);
    const list = decoder.listBy(new Int32Array(10));
    expect(decoder.decode(list, new Array<number>(10).fill(500)).finish).toBeGreaterThanOrEqual(500);
  });
});
