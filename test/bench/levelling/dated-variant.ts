import { searchSchedule, workDaysOf, type SearchProblem } from '../../../core/scheduling/search';
import type { Instance } from './instances';
import { cpuSeconds } from './measure';
import { schedulesFor, type BenchOptions } from './options';

/** The instance with three calendars (5, 6 and 7 days a week), some lags of two days and a varying capacity. */
export function datedVariant(problem: SearchProblem): SearchProblem {
  const horizon = problem.horizon * 2;
  const week = (idle: readonly number[]) =>
    workDaysOf(Array.from({ length: horizon }, (_, day) => !idle.includes(day % 7)));
  return {
    ...problem,
    horizon,
    calendars: [week([5, 6]), week([6]), week([])],
    activities: problem.activities.map((activity, i) => ({ ...activity, calendar: i % 3 })),
    relationships: problem.relationships.map((link, k) => ({ ...link, minimumLag: k % 4 === 0 ? 2 : 0 })),
    resources: problem.resources.map((resource, r) =>
      r === 0 ? varying(resource.capacity, horizon) : resource,
    ),
  };
}

function varying(capacity: number, horizon: number) {
  const capacityByDay = Int32Array.from({ length: horizon }, (_, day) =>
    day % 40 < 35 ? capacity : capacity - 2,
  );
  return { capacity, capacityByDay };
}

/** Schedules a CPU second inside the search, with calendars, lags and varying capacity against without. */
export function compareDated(instances: readonly Instance[], options: BenchOptions) {
  const plain = speedOf(
    instances.map(({ problem }) => problem),
    options,
  );
  const dated = speedOf(
    instances.map(({ problem }) => datedVariant(problem)),
    options,
  );
  const share = dated / plain;
  const text =
    `${options.set}: ${Math.round(plain)} schedules a second plain, ${Math.round(dated)} with three calendars, lags and ` +
    `varying capacity, share ${share.toFixed(2)}`;
  return { plain, dated, share, text, exitCode: 0 };
}

function speedOf(problems: readonly SearchProblem[], options: BenchOptions): number {
  let schedules = 0;
  let seconds = 0;
  for (const problem of problems) {
    const before = cpuSeconds();
    const asked = schedulesFor(options, problem.activities.length);
    const result = searchSchedule(problem, { schedules: asked, seed: 1, isHeuristicOnly: true });
    if (result.schedules < asked) continue;
    schedules += result.schedules;
    seconds += cpuSeconds() - before;
  }
  return schedules / seconds;
}
