/**
 * How long a re-estimate takes, after an edit that moves every line: the two sheets with the schedule held, and the whole
 * evaluation with 200 and with 1,000 schedules, of the example and of 4 and 16 times its lines. Every run is of a
 * lightship and of a first day that were not evaluated before, so that no sheet and no schedule is answered from memory.
 */
import { dayOf, isoOf } from '../../core/calendar';
import { moneySheet, workSheet, type EstimateInput } from '../../core/estimate';
import { evaluate, itemTimings, pricedGeneration, shippedLibrary } from '../../core/evaluation';
import type { Project } from '../../core/project';
import { schedule as scheduleOf, type ScheduleProblem } from '../../core/scheduling';
import { TODAY, exampleProject, largeProject } from './large-project';
import { measured, print, type Times } from './times';

const OPTIONS = { today: TODAY, seed: 1, upright: false } as const;

/** The ship a little heavier at every run, within the range that is given for it. */
const heavier = (tonnes: string, run: number) => (Number(tonnes) * (1 + (run + 1) / 2500)).toFixed(3);

/** The project with the ship of a run, begun a day later at every run. */
function inRun(project: Project, run: number): Project {
  const { lightship } = project.vessel;
  if (lightship === undefined) return project;
  const value = heavier(lightship.value, run);
  return {
    ...project,
    vessel: { ...project.vessel, lightship: { ...lightship, value } },
    calendars: { ...project.calendars, start: isoOf(dayOf(project.calendars.start) + run) },
  };
}

/** Both sheets, with the dates of the schedule held or with a schedule of up to so many passes between them. */
function sheets(project: Project, name: string, runs: number, schedules?: number): Times {
  const library = shippedLibrary();
  const parts = evaluate(project, { ...OPTIONS, schedules: 1 }).estimate;
  if (parts === undefined) throw new Error('the example cannot be estimated');
  const { input, planned, schedule, generator } = parts;
  const drivers = library.drivers.filter(driver => parts.work.drivers.scope.index.has(driver.id));
  const timings = itemTimings(planned, schedule, input.prices);
  const generation = generator && pricedGeneration(input.library, generator);
  const given = input.ship.particulars.lightship;
  const inputOf = (run: number): EstimateInput => {
    if (given?.value === undefined) return input;
    const lightship = { ...given, value: heavier(given.value, run) };
    return { ...input, ship: { ...input.ship, particulars: { ...input.ship.particulars, lightship } } };
  };
  const warmUp = 15;
  const problems =
    schedules === undefined ? [] : Array.from({ length: runs + warmUp }, (_, run) => problemIn(project, run));
  return measured(name, runs, warmUp, run => {
    const now = inputOf(run);
    const work = workSheet(now, drivers, parts.items);
    const problem = problems[run];
    const dates =
      problem && schedules !== undefined
        ? itemTimings(planned, scheduleOf(problem, { schedules, seed: 1 }), input.prices)
        : timings;
    moneySheet(now, work, dates, new Map(), generation);
  });
}

/** What is scheduled in a run. */
function problemIn(project: Project, run: number): ScheduleProblem {
  const parts = evaluate(inRun(project, run), { ...OPTIONS, schedules: 1 }).estimate;
  if (parts === undefined) throw new Error('the example cannot be estimated');
  return parts.problem;
}

const whole = (project: Project, schedules: number, name: string, runs: number, warmUp: number): Times =>
  measured(name, runs, warmUp, run => void evaluate(inRun(project, run), { ...OPTIONS, schedules }));

/** `npm run bench -- estimate [--json] [--sheets-only] [--all]`. */
export function estimate(args: readonly string[]): Promise<number> {
  const project = exampleProject();
  const lines = evaluate(project, { ...OPTIONS, schedules: 1 }).estimate?.items.length ?? 0;
  const held = (of: Project, times: number, runs: number) =>
    sheets(of, `both sheets, schedule held, ${times * lines} lines`, runs);
  const scheduled = (of: Project, times: number, [runs, warmUp]: readonly [number, number]) =>
    [200, 1000].map(schedules =>
      whole(of, schedules, `evaluation with ${schedules} schedules, ${times * lines} lines`, runs, warmUp),
    );
  // The example goes first: the larger projects fill the memory that is swept while it is timed.
  const example = held(project, 1, 60);
  const evaluations = args.includes('--sheets-only') ? [] : scheduled(project, 1, [60, 30]);
  const between = args.includes('--sheets-only')
    ? []
    : [200, 1000].map(schedules =>
        sheets(project, `both sheets and a schedule of ${schedules}, ${lines} lines`, 60, schedules),
      );
  const larger = ([4, 16] as const).map(times => {
    const large = largeProject(times * lines);
    const both = held(large, times, times === 16 ? 20 : 60);
    return { both, evaluations: args.includes('--all') ? scheduled(large, times, [2, 0]) : [] };
  });
  const sheetRows = [example, ...larger.map(size => size.both)];
  const growth = (sheetRows[2]?.median ?? Number.NaN) / example.median;
  const rows = [...sheetRows, ...between, ...evaluations, ...larger.flatMap(size => size.evaluations)];
  print(rows, { growthOfTheSheetsAt16Times: growth.toFixed(1) }, args.includes('--json'));
  return Promise.resolve(0);
}
