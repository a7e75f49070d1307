import { afterEach, expect, it, vi } from 'vitest';
import type * as Search from '../../../core/scheduling/search';
import { leastCrew, levelSchedule, schedule, searchCrewPlan } from '../../../core/scheduling';
import { problemOf, work } from './problems';

const broken = vi.hoisted(() => ({ is: false }));
vi.mock('../../../core/scheduling/search', async original => {
  const search = await original<typeof Search>();
  const searchSchedule: typeof search.searchSchedule = (problem, options) => {
    if (broken.is) throw new Error('the search is broken');
    return search.searchSchedule(problem, options);
  };
  return { ...search, searchSchedule };
});
afterEach(() => {
  broken.is = false;
});

it('scheduling, levelling, the least crew and the crew plan all rest on the one search: broken, all fail', () => {
  const problem = problemOf([work('A', 3, { uses: { crew: 1 } })], [], {
    resources: [{ id: 'crew', title: 'Crew', capacity: 2 }],
  });
  const options = { schedules: 20, seed: 1 };
  const all = [
    () => schedule(problem, options),
    () => levelSchedule(problem, { ...options, objective: 'squares' }),
    () => leastCrew(problem, { ...options, finishBy: '2027-03-10', unitCosts: { crew: 1 } }),
    () => searchCrewPlan(problem, { ...options, cost: (_, timed) => timed.calendarDays }),
  ];
  for (const run of all) expect(run).not.toThrow();
  broken.is = true;
  for (const run of all) expect(run).toThrow('the search is broken');
});
