import { at, known, withId } from '../../base';
import { addMonths, dayOf, isoOf } from '../../calendar';
import type { EstimateInput } from '../../estimate';
import { CostCurve, fasterPlans } from '../../scheduling';
import type { EvaluateOptions, Evaluation } from '../evaluate';
import { sizedItems, type CrewChoice } from './crew-sizes';
import { answerOf, type CrewPlanAnswer } from './plan-answer';
import { pointOf, type CrewPlanPoint, type ShiftPattern } from './plan-point';
import { sizedProblem } from './plan-problem';
import { changesOf, runPlan, type Plan, type RanPlan } from './plan-run';

export interface CrewPlanAsk {
  /** The last day by which all must be finished, `YYYY-MM-DD`; absent: the end of the grant period, if there is one. */
  readonly finishBy?: string;
  /** Starts to try beside the present one, each a month after the other. */
  readonly starts?: number;
}

/** How far the search is: estimates run, and about how many there will be. */
export interface CrewPlanProgress {
  readonly done: number;
  readonly of: number;
  readonly words: string;
}

/** Starts tried unless told otherwise, and plans that are tried at each. */
const STARTS = 6;
const PLANS_MOVED = 2;
/** Faster plans that are estimated for each shift pattern, at most. */
const MOST_FASTER = 14;
/** Larger crews of the best plan that are tried without. */
const MOST_LEFT_OUT = 8;
/** Passes spent on each schedule of the inner search, which only decides what is worth an estimate. */
const INNER_PASSES = 30;

/**
 * Which crew sizes, shifts and first day cost least in total: the estimate, escalation and time-dependent cost in it,
 * and what waiting for weather is expected to cost. For each shift pattern the plans that finish earlier and earlier are
 * looked for by the scheduler; each of them is then estimated anew, and no cost is told that is not the estimate's own.
 * The best is tried without each of its larger crews, and the cheapest at later starts.
 * @returns undefined without a schedule or prices.
 */
export function* crewPlanStudy(
  evaluation: Evaluation,
  options: EvaluateOptions,
  ask: CrewPlanAsk,
): Generator<CrewPlanProgress, CrewPlanAnswer | undefined> {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return undefined;
  const search = new CrewPlanSearch(evaluation, estimate.input, options, ask);
  for (const shift of search.shifts) yield* search.hurried(shift);
  yield* search.leftOut();
  yield* search.moved();
  return answerOf(evaluation, search.points, search.finishBy);
}

class CrewPlanSearch {
  readonly shifts: readonly ShiftPattern[];
  readonly finishBy: string | undefined;
  readonly points: CrewPlanPoint[] = [];
  private readonly evaluation: Evaluation;
  private readonly options: EvaluateOptions;
  private readonly present: Plan;
  private readonly known = new Map<string, RanPlan | undefined>();
  private readonly starts: number;

  constructor(evaluation: Evaluation, input: EstimateInput, options: EvaluateOptions, ask: CrewPlanAsk) {
    this.evaluation = evaluation;
    this.options = options;
    const { project, library } = evaluation;
    const shift = known(new Map(Object.entries(input.options)), 'shift-pattern');
    this.present = { shift, start: project.calendars.start, crews: [] };
    this.finishBy = ask.finishBy ?? project.calendars.deadline;
    this.starts = project.statusDate === undefined ? (ask.starts ?? STARTS) : 0;
    this.shifts = withId(library.options, 'shift-pattern')
      .values.map(({ id, title, shift: pattern }) => ({
        id,
        title,
        isLong: Number(pattern?.hours.value) > 8 || Number(pattern?.daysAWeek.value) > 5,
      }))
      .toSorted((a, b) => Number(b.id === shift) - Number(a.id === shift));
  }

  /** Faster and faster plans under a shift pattern. */
  *hurried(shift: ShiftPattern): Generator<CrewPlanProgress, void> {
    const plain: Plan = { ...this.present, shift: shift.id };
    const base = this.run(plain);
    yield this.progress(shift.title);
    if (base === undefined) return;
    const sized = sizedItems(base.parts);
    const bySize = new Map<string, RanPlan>();
    for (const { id } of base.parts.input.library.rateBook.crewSizes.sizes) {
      const crews = sized.flatMap(item => item.choices.filter(choice => choice.size === id));
      const run = crews.length === 0 ? undefined : this.run({ ...plain, crews }, false);
      if (run !== undefined) bySize.set(id, run);
      yield this.progress(shift.title);
    }
    const { problem, choices, extra } = sizedProblem(base, sized, bySize);
    const found = fasterPlans(problem, {
      schedules: INNER_PASSES,
      seed: this.options.seed,
      extraCost: (activity, from, to) => at(at(extra, activity), to) - at(at(extra, activity), from),
    });
    let tried = 0;
    for (const faster of found) {
      if (faster !== undefined) {
        const crews = faster.modes.flatMap((mode, activity): CrewChoice[] => {
          const choice = at(choices, activity)[mode];
          return choice === undefined ? [] : [choice];
        });
        this.run({ ...plain, crews });
        if (tried++ === MOST_FASTER) return;
      }
      yield this.progress(shift.title);
    }
  }

  /** The best plan without each of its larger crews in turn; what costs less without is left without. */
  *leftOut(): Generator<CrewPlanProgress, void> {
    const best = this.best();
    if (best === undefined) return;
    let plan: Plan = { shift: best.shift, start: this.present.start, crews: best.crews };
    let { cost } = best;
    for (const choice of best.crews.slice(0, MOST_LEFT_OUT)) {
      const without = { ...plan, crews: plan.crews.filter(one => one !== choice) };
      const point = this.pointFor(without);
      yield this.progress('Without each of the larger crews');
      const isLate = this.finishBy !== undefined && point !== undefined && point.finish > this.finishBy;
      if (point !== undefined && point.cost <= cost && !isLate) [plan, cost] = [without, point.cost];
    }
  }

  /** The cheapest plans, each started later. */
  *moved(): Generator<CrewPlanProgress, void> {
    const cheapest = this.points.toSorted((a, b) => a.cost - b.cost);
    const plans = [...new Map(cheapest.map(point => [point.shift, point])).values()].slice(0, PLANS_MOVED);
    for (const { shift, crews } of plans) {
      for (let month = 1; month <= this.starts; month++) {
        this.run({ shift, crews, start: isoOf(addMonths(dayOf(this.present.start), month)) });
        yield this.progress('Later starts');
      }
    }
  }

  private best(): CrewPlanPoint | undefined {
    const curve = new CostCurve<CrewPlanPoint>();
    for (const point of this.points) curve.add(point);
    return curve.best(this.finishBy) ?? curve.points()[0];
  }

  private pointFor(plan: Plan): CrewPlanPoint | undefined {
    this.run(plan);
    const id = idOf(plan);
    return this.points.find(point => point.id === id);
  }

  /** The estimate of a plan; its point joins the others when it is one to choose. */
  private run(plan: Plan, isChoice = true): RanPlan | undefined {
    const id = idOf(plan);
    if (this.known.has(id)) return this.known.get(id);
    const { project } = this.evaluation;
    const changes = changesOf(project, this.present, plan);
    const run = runPlan(project, changes, this.options);
    this.known.set(id, run);
    if (run !== undefined && isChoice) {
      const shift = withId(this.shifts, plan.shift);
      this.points.push({ ...pointOf(run, plan, { changes, shift, present: this.present }), id });
    }
    return run;
  }

  private progress(words: string): CrewPlanProgress {
    const sizes = this.evaluation.library.rateBook.crewSizes.sizes.length;
    const each = 1 + sizes + MOST_FASTER;
    const of = this.shifts.length * each + MOST_LEFT_OUT + PLANS_MOVED * this.starts;
    return { done: Math.min(this.known.size, of), of, words };
  }
}

function idOf({ shift, start, crews }: Plan): string {
  return [shift, start, ...crews.map(one => `${one.item}:${one.crews}`)].join(' ');
}
