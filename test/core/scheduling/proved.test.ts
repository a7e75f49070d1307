import { describe, expect, it } from 'vitest';
import { dayOf, isoOf } from '../../../core/calendar';
import { evaluate } from '../../../core/evaluation';
import { schedule, verifySchedule } from '../../../core/scheduling';
import { TODAY, exampleProject } from '../../bench/large-project';

describe('the example, begun on other days', () => {
  const project = exampleProject();
  const begun = (day: number) => {
    const start = isoOf(dayOf(project.calendars.start) + day);
    const moved = { ...project, calendars: { ...project.calendars, start } };
    const { estimate } = evaluate(moved, { today: TODAY, seed: 1, schedules: 1, upright: false });
    if (estimate === undefined) throw new Error('the example cannot be estimated');
    return estimate.problem;
  };

  it.each([0, 1, 6, 17, 24, 33, 60, 150])(
    '%d days later it is scheduled as early as can be, and that is proved',
    day => {
      const problem = begun(day);
      const made = schedule(problem, { schedules: 1000, seed: 1 });
      expect(made).toMatchObject({ status: 'optimal', gapDays: 0 });
      expect(verifySchedule(problem, made)).toEqual([]);
    },
  );

  it('never costs more passes than were asked for, also where the proof is not found', () => {
    for (const schedules of [500, 501, 530]) {
      const made = schedule(begun(11), { schedules, seed: 3 });
      expect(made.schedules).toBeLessThanOrEqual(schedules);
      expect(made.gapDays).toBeGreaterThanOrEqual(0);
    }
  });
});
