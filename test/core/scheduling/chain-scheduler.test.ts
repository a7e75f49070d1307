import { describe, expect, it } from 'vitest';
import { chainScheduler, schedule, type ScheduleProblem } from '../../../core/scheduling';
import { after, problemOf, work } from './problems';

const problem: ScheduleProblem = problemOf(
  [
    work('cut', 3, { uses: { crew: 1 } }),
    work('clean', 2, { uses: { crew: 1 } }),
    work('tow', 3, { calendar: 'all', consecutive: { weatherDays: 0 } }),
  ],
  [after('cut', 'clean'), after('clean', 'tow', { lag: 1, lagUnit: 'day' })],
  { resources: [{ id: 'crew', title: 'Crew', capacity: 1 }] },
);

/** Trials of cut, clean and tow by their days, scheduled at once. */
function run(days: readonly (readonly number[])[], towNotBefore = 0) {
  const plan = schedule(problem, { schedules: 50, seed: 1 });
  const scheduler = chainScheduler(problem, plan);
  if (scheduler === undefined) throw new Error('the plan is not told by chains');
  const n = days.length;
  const durations = [0, 1, 2].map(i => Float64Array.from(days, row => row[i] ?? Number.NaN));
  const columns = () => [0, 1, 2].map(() => new Float64Array(n));
  const gate = { begin: () => undefined, startOf: (_: number, day: number) => Math.max(day, towNotBefore) };
  const dates = { n, durations, starts: columns(), finishes: columns(), finish: new Float64Array(n) };
  const asked = { ...dates, gates: new Map([[2, gate]]) };
  scheduler.chunk(asked);
  const counts = new Float64Array(3);
  scheduler.countDriving(asked, counts);
  return { starts: dates.starts.map(c => [...c]), finish: [...dates.finish], counts: [...counts] };
}

describe('trials scheduled at once', () => {
  it('with the planned durations give the plan; longer work pushes what follows over the weekend', () => {
    const { starts, finish } = run([
      [3, 2, 3],
      [3.4, 2, 3],
    ]);
    expect([starts, finish]).toEqual([
      [
        [0, 0],
        [3, 4],
        [6, 9],
      ],
      [9, 12],
    ]);
  });
  it('a tow held back by weather starts no earlier, and drives the finish by itself', () => {
    expect(run([[3, 2, 3]], 20)).toMatchObject({ starts: [[0], [3], [20]], finish: [23] });
  });
  it('tell what drives the finish: all that the last finish had to wait for', () => {
    expect(run([[3, 2, 3]]).counts).toEqual([1, 1, 1]);
  });
  it('have no finish where a duration is absent, and the trials beside it are untouched', () => {
    const { finish } = run([
      [Number.NaN, 2, 3],
      [3, 2, 3],
    ]);
    expect(finish).toEqual([Number.NaN, 9]);
  });
});
