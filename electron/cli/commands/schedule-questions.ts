import type { Finding } from '../../../core/base';
import { addMonths, dayOf, isoOf } from '../../../core/calendar';
import { evaluate, summarise, type Evaluation, type EstimateParts } from '../../../core/evaluation';
import { dollarsOf } from '../../../core/money';
import { compareBaseline, searchCrewPlan, type PricedPlan } from '../../../core/scheduling';
import { UsageError, type Call } from '../command';
import { loadProject, todayOf } from '../load';
import { crewAnswers } from './crew-questions';

/** What else may be asked of a schedule, beside its dates. */
export const QUESTIONS = {
  baseline: { type: 'string', words: 'what has moved against the plan of another document', sample: 'FILE' },
  starts: { type: 'string', words: 'what the project costs when it starts in each of N months', sample: 'N' },
  level: {
    type: 'boolean',
    words: 'the finish kept and the crews evened out: peaks, hiring and releasing before and after',
  },
  'least-crew': { type: 'boolean', words: 'the fewest crews that finish by the day of --by' },
  'crew-plan': {
    type: 'boolean',
    words:
      'which crew sizes, shifts and start cost least by the day of --by, and the whole curve of cost over time',
  },
  by: { type: 'string', words: 'the last day for --least-crew and --crew-plan', sample: 'YYYY-MM-DD' },
} as const;

/** The answers to what was asked. */
export interface Answers {
  readonly json: Readonly<Record<string, unknown>>;
  readonly lines: readonly string[];
  readonly findings: readonly Finding[];
}

const EFFORT = { schedules: 1000, seed: 1 };

export function answersTo(call: Call, evaluation: Evaluation): Answers {
  const { estimate } = evaluation;
  if (estimate === undefined) return NOTHING;
  const answers = [
    againstBaseline(call, evaluation, estimate),
    call.flag('crew-plan') ? NOTHING : startCurve(call, evaluation, estimate),
    crewAnswers(call, evaluation),
  ];
  return {
    json: Object.fromEntries(answers.flatMap(answer => Object.entries(answer.json))),
    lines: answers.flatMap(answer => answer.lines),
    findings: answers.flatMap(answer => answer.findings),
  };
}

const NOTHING: Answers = { json: {}, lines: [], findings: [] };

function againstBaseline(call: Call, { scenario }: Evaluation, { schedule }: EstimateParts): Answers {
  const file = call.option('baseline');
  if (file === undefined) return NOTHING;
  const { project } = loadProject(file);
  if (project === undefined) throw new UsageError(`${file} is not a project that can be read.`);
  const old = evaluate(project, {
    today: todayOf(call, project),
    seed: 1,
    upright: false,
    ...same(scenario.id, project),
  });
  if (old.estimate === undefined) throw new UsageError(`${file} has no schedule to compare with.`);
  const change = compareBaseline(old.estimate.schedule, schedule);
  return {
    ...NOTHING,
    json: { againstBaseline: change },
    lines: [
      `Against the baseline: finish ${signed(change.finish)} calendar days, ${change.changed.length} activities changed, ${change.added.length} new, ${change.removed.length} gone`,
      ...change.changed.map(
        ({ title, start, finish, workDays }) =>
          `  ${title}: start ${signed(start)}, finish ${signed(finish)} calendar days, ${signed(workDays)} work days`,
      ),
    ],
  };
}

function same(id: string, { scenarios }: Evaluation['project']): { scenario?: string } {
  return scenarios.some(scenario => scenario.id === id) ? { scenario: id } : {};
}

function signed(days: number | undefined): string {
  return days === undefined ? 'unknown' : days > 0 ? `+${days}` : String(days);
}

const MOST_STARTS = 36;

/** The total for a start in each of some months, and of those what no other start beats in both cost and time. */
function startCurve(call: Call, evaluation: Evaluation, { problem }: EstimateParts): Answers {
  const text = call.option('starts');
  if (text === undefined) return NOTHING;
  const count = Number(text);
  if (!Number.isInteger(count) || count < 1 || count > MOST_STARTS)
    throw new UsageError(`--starts takes a whole number from 1 to ${MOST_STARTS}, not "${text}".`);
  const starts = Array.from({ length: count }, (_, month) => startAfter(problem.horizonStart, month));
  const found = searchCrewPlan(problem, {
    ...EFFORT,
    starts,
    cost: ({ start }) => totalFor(evaluation, start),
  });
  const priced = found.curve.filter(({ cost }) => Number.isFinite(cost));
  return {
    ...NOTHING,
    json: {
      startCurve: { tried: found.tried, isComplete: found.isComplete, points: priced.map(pointOf) },
      ...(found.best === undefined || priced.length === 0 ? {} : { cheapestStart: pointOf(found.best) }),
    },
    lines: [
      'Total by start:',
      ...priced.map(
        point =>
          `  start ${point.plan.start}  finish ${point.finish}  ${point.cost.toFixed(2)}${point === found.best ? '  cheapest' : ''}`,
      ),
    ],
  };
}

function startAfter(first: string, months: number): string {
  return months === 0 ? first : isoOf(addMonths(dayOf(first), months));
}

function pointOf({ plan, finish, calendarDays, cost }: PricedPlan) {
  return { start: plan.start, finish, calendarDays, total: cost };
}

/** The whole loop again with another first day; no total, no place on the curve. */
function totalFor({ project, today }: Evaluation, start: string): number {
  const moved = { ...project, calendars: { ...project.calendars, start } };
  const { estimate } = evaluate(moved, { today, seed: EFFORT.seed, upright: false });
  if (estimate?.money === undefined) return Infinity;
  const { total } = summarise({ ...estimate, money: estimate.money });
  return total === undefined ? Infinity : dollarsOf(total);
}
