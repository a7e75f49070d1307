/**
 * How long a schedule takes with its floats and reasons, and its day-by-day check: the example's scenarios with 1,000
 * passes, the example's items again and again to 2,000 lines, and a made-up project of 10,000 activities, both with the
 * passes their size is worth.
 */
import { schedule, usualSchedules, verifySchedule, type ScheduleProblem } from '../../core/scheduling';
import { evaluate } from '../../core/evaluation';
import type { Project } from '../../core/project';
import { bigProblem } from '../core/scheduling/big-problem';
import { TODAY, exampleProject, largeProject } from './large-project';
import { print, timesOf, type Times } from './times';

function timed(name: string, problem: ScheduleProblem, schedules: number, runs: number): Times[] {
  const [made, checked]: [number[], number[]] = [[], []];
  let end = '';
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    const result = schedule(problem, { schedules, seed: 1 });
    const middle = performance.now();
    const findings = verifySchedule(problem, result);
    if (findings.length > 0) throw new Error(findings[0]?.message);
    made.push(middle - start);
    checked.push(performance.now() - middle);
    end = `${result.calendarDays ?? '-'} days, gap ${result.gapDays ?? '-'}, ${result.schedules} passes`;
  }
  const warm = Math.min(20, Math.floor(runs / 2));
  return [timesOf(`${name}: ${end}`, made.slice(warm)), timesOf(`${name}: check`, checked.slice(warm))];
}

function problemOf(project: Project, scenario?: string): ScheduleProblem {
  const options = { today: TODAY, seed: 1, schedules: 1, upright: false };
  const { estimate } = evaluate(project, scenario === undefined ? options : { ...options, scenario });
  if (estimate === undefined) throw new Error('the example cannot be estimated');
  return estimate.problem;
}

/** `npm run bench -- schedule [--json] [--scenario ID [--schedules N]]`: with a scenario, that of the example alone. */
export function scheduling(args: readonly string[]): Promise<number> {
  const example = exampleProject();
  const asked = args.indexOf('--scenario');
  if (asked >= 0) {
    const id = args[asked + 1] ?? '';
    const most = args.indexOf('--schedules');
    const schedules = most < 0 ? 1000 : Number(args[most + 1]);
    print(
      timed(id, problemOf(example, id), schedules, schedules > 1000 ? 3 : 200),
      {},
      args.includes('--json'),
    );
    return Promise.resolve(0);
  }
  const rows = example.scenarios.flatMap(({ id }) => timed(id, problemOf(example, id), 1000, 60));
  const large = problemOf(largeProject(2000));
  rows.push(...timed('2,000 lines', large, usualSchedules(large.activities.length), 30));
  rows.push(...timed('10,000 activities', bigProblem(10_000), usualSchedules(10_000), 4));
  print(rows, {}, args.includes('--json'));
  return Promise.resolve(0);
}
