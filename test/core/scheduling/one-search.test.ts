import { afterEach, expect, it, vi } from 'vitest';
import type * as Search from '../../../core/scheduling/search';
import { leastCrew, levelSchedule, schedule, searchCrewPlan } from '../../../core/scheduling';
import { evaluate } from '../../../core/evaluation';
import { prepareRisk } from '../../../core/evaluation/risk';
import { measureAll } from '../../bench/levelling/measure';
import type { BenchOptions } from '../../bench/levelling/options';
import { demoProject } from '../evaluation/demo';
import { randomProblem } from '../scheduling-search/random-problem';
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

/** A run of the bench on one small problem. */
function bench(): unknown {
  const options: BenchOptions = {
    set: 'small',
    dir: '',
    schedules: 20,
    seeds: 1,
    every: 1,
    from: 0,
    take: Infinity,
    isJson: true,
    isHeuristicOnly: false,
    isHardOnly: false,
    doesBounds: false,
    doesReference: false,
    doesPeer: false,
    doesDated: false,
  };
  const problem = randomProblem(1, { activities: 8 });
  const instance = { name: 'small', problem, known: { instance: 'small' }, criticalPath: 1, reference: 1 };
  return measureAll([instance], options);
}

it('the bench, the evaluation, levelling and risk call the same search: broken, all four fail', () => {
  const problem = problemOf([work('A', 3, { uses: { crew: 1 } })], [], {
    resources: [{ id: 'crew', title: 'Crew', capacity: 2 }],
  });
  const project = demoProject();
  // Each evaluation with a seed of its own: an answer kept from before would not search.
  const evaluation = (seed: number) =>
    evaluate(project, { today: '2026-11-24', seed, schedules: 5, upright: false });
  const all = [
    bench,
    (seed: number) => evaluation(seed),
    () => levelSchedule(problem, { schedules: 20, seed: 1, objective: 'squares' }),
    (seed: number) => prepareRisk(evaluation(1000 + seed)),
  ];
  for (const run of all) expect(() => run(1)).not.toThrow();
  broken.is = true;
  for (const run of all) expect(() => run(2)).toThrow('the search is broken');
});
