import { at, randomStream } from '../../base';
import { dayOf, isoOf } from '../../calendar';
import { compile } from '../compile/compile';
import { plannedModes } from '../compile/compile-activities';
import type { ScheduleProblem } from '../model';
import { place, schedule } from '../schedule';
import { CostCurve } from './cost-curve';
import type { CrewPlan, CrewPlanOptions, CrewPlanResult, PricedPlan } from './plan';

/** Up to so many plans are all tried; beyond, the search goes on from plans on the curve. */
const TRY_ALL_UP_TO = 4000;
const TRIALS = 1500;

/**
 * Which crew for every activity, which shifts and which first day cost least in total, and the whole curve of cost
 * over time. Few plans are all tried; of many, the search changes one to three crews of a plan on the curve at a
 * time and keeps what is cheaper for its finish.
 * @throws BugError for a problem with findings: check it first.
 */
export function searchCrewPlan(problem: ScheduleProblem, options: CrewPlanOptions): CrewPlanResult {
  const choices = choicesOf(problem, options);
  const curve = new CostCurve<PricedPlan>();
  const seen = new Set<string>();
  let tried = 0;
  const attempt = (plan: CrewPlan): number => {
    const key = JSON.stringify(plan);
    if (seen.has(key)) return 0;
    seen.add(key);
    tried++;
    options.onProgress?.({ schedules: tried, lowerBound: 0 });
    const priced = price(problem, plan, options);
    if (priced) curve.add(priced);
    return 1;
  };
  const isStopped = () => options.shouldStop?.() === true;
  const isComplete = choices.count <= (options.trials ?? TRY_ALL_UP_TO);
  if (isComplete) tryAll(choices, attempt, isStopped);
  else tryFromCurve(choices, attempt, curve, options, isStopped);
  const best = curve.best(options.finishBy);
  return {
    ...(best ? { best } : {}),
    curve: curve.points(),
    frontier: curve.frontier(),
    tried,
    isComplete: isComplete && !isStopped(),
  };
}

/** What can be chosen: the number of crews of each activity, shifts and first days. */
interface Choices {
  readonly crews: readonly number[];
  readonly planned: readonly number[];
  readonly shifts: readonly (string | undefined)[];
  readonly starts: readonly string[];
  readonly count: number;
}

function choicesOf(problem: ScheduleProblem, options: CrewPlanOptions): Choices {
  const crews = problem.activities.map(activity => activity.modes?.length ?? 1);
  const shifts = [undefined, ...(options.shifts ?? []).map(shift => shift.id)];
  const starts = options.starts ?? [problem.horizonStart];
  const count = crews.reduce((product, n) => product * n, shifts.length * starts.length);
  return { crews, planned: plannedModes(problem), shifts, starts, count };
}

function planOf(modes: readonly number[], shift: string | undefined, start: string): CrewPlan {
  return { modes, start, ...(shift === undefined ? {} : { shift }) };
}

function tryAll(choices: Choices, attempt: (plan: CrewPlan) => number, isStopped: () => boolean): void {
  for (const start of choices.starts) {
    for (const shift of choices.shifts) {
      const modes = choices.crews.map(() => 0);
      for (let more = true; more && !isStopped();) {
        attempt(planOf(modes.slice(), shift, start));
        const next = modes.findIndex((mode, i) => mode + 1 < at(choices.crews, i));
        more = next >= 0;
        if (more) modes[next] = at(modes, next) + 1;
        modes.fill(0, 0, Math.max(0, next));
      }
    }
  }
}

function tryFromCurve(
  choices: Choices,
  attempt: (plan: CrewPlan) => number,
  curve: CostCurve<PricedPlan>,
  options: CrewPlanOptions,
  isStopped: () => boolean,
): void {
  const random = randomStream(options.seed, 'crew plan');
  const pick = (n: number) => Math.floor(random() * n);
  const changeable = choices.crews.flatMap((n, i) => (n > 1 ? [i] : []));
  for (const start of choices.starts)
    for (const shift of choices.shifts) attempt(planOf(choices.planned, shift, start));
  const limit = options.trials ?? TRIALS;
  for (let draws = 0, tried = 0; tried < limit && draws < 4 * limit && !isStopped(); draws++) {
    // Every finish on the curve is a place to go on from: a dear plan may be one step from a cheap one.
    const points = random() < 0.5 ? curve.points() : curve.frontier();
    if (points.length === 0 || changeable.length === 0) return;
    const { plan } = at(points, pick(points.length));
    const modes = plan.modes.slice();
    for (let n = 1 + pick(3); n > 0; n--) {
      const activity = at(changeable, pick(changeable.length));
      modes[activity] = changedCrew(at(modes, activity), at(choices.crews, activity), random);
    }
    const shift = random() < 0.1 ? choices.shifts[pick(choices.shifts.length)] : plan.shift;
    const start = random() < 0.1 ? at(choices.starts, pick(choices.starts.length)) : plan.start;
    tried += attempt(planOf(modes, shift, start));
  }
}

/** Mostly the next larger or smaller crew, now and then any. */
function changedCrew(mode: number, count: number, random: () => number): number {
  if (random() < 0.3) return Math.floor(random() * count);
  return Math.min(count - 1, Math.max(0, mode + (random() < 0.5 ? -1 : 1)));
}

/** Schedules a plan and asks what it costs; undefined when it has no schedule. */
function price(problem: ScheduleProblem, plan: CrewPlan, options: CrewPlanOptions): PricedPlan | undefined {
  const shift = options.shifts?.find(choice => choice.id === plan.shift);
  const changed = {
    ...problem,
    horizonStart: plan.start,
    calendars: { ...problem.calendars, ...(shift?.calendars ?? {}) },
  };
  const { placed } = place(compile(changed, plan.modes), options);
  if (!placed) return undefined;
  const finish = isoOf(dayOf(plan.start) + Math.max(0, placed.finish - 1));
  const result = () => schedule(changed, { ...options, modes: plan.modes });
  const cost = options.cost(plan, { finish, calendarDays: placed.finish, result });
  return { plan, finish, calendarDays: placed.finish, cost };
}
