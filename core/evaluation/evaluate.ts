import { BugError, isSameData, keeping, type Finding } from '../base';
import {
  inCalendarDays,
  moneySheet,
  scheduleProblem,
  type PlanProblem,
  workSheet,
  type EstimateInput,
  type MoneySheet,
  type PlannedItem,
  type WorkSheet,
} from '../estimate';
import type { UprightResult } from '../flooding';
import { checkProject, withScenario, type Project, type Scenario } from '../project';
import { usualSchedules, type ScheduleProblem, type ScheduleResult } from '../scheduling';
import type { ItemRelationship, Library, WorkItem } from '../work';
import type { GeneratorPlan } from '../disposal';
import { absentCauses } from './absent-causes';
import { ageingFindings } from './ageing';
import { estimateInput, faultsOf } from './estimate-input';
import { datesOf, hazardousWaste, pricedGeneration } from './generator';
import { goalFindings, type UnmetGoal } from './goals';
import { quotedLines, type QuotedLines } from './line-quotes';
import { crewLimits, placeLimits } from './place-limits';
import type { ReviewTrials } from './books/review-record';
import { confidenceFindings, type SimulatedContingency } from './risk/policy-contingency';
import { ruleFindings } from './rules';
import { scheduledInSteps, scheduledOrHeld, verifiedOnce, type Effort } from './scheduled-once';
import { scopeOfWork } from './scope-of-work';
import { surveyOf } from './survey';
import { shippedLibrary } from './templates';
import { towOf, withTowDays, type TowView } from './tow';
import { itemTimings } from './timing';
import { screenUpright, withSizedOpenings } from './upright';

/** How a project is evaluated. */
export interface EvaluateOptions {
  /** Today, `YYYY-MM-DD`: expiry of quotes and age of figures are told by it. */
  readonly today: string;
  readonly seed: number;
  /** Passes the scheduler may spend; absent: what a schedule of its size is worth. */
  readonly schedules?: number;
  /** The scenario by id; the first of the file unless given. */
  readonly scenario?: string;
  readonly library?: Library;
  /** The contingency of a simulation of the same plan, where the project sets it by confidence. */
  readonly simulated?: SimulatedContingency;
  /** What trials of this plan found, for the quality review. */
  readonly trials?: ReviewTrials;
  /** Whether the upright screen is run, a fifth of a second when the hull or its weights changed; it is unless told otherwise. */
  readonly upright?: boolean;
  /**
   * A schedule whose dates hold until the plan is scheduled anew: with it the plan is priced at once, at the dates held
   * where it was not scheduled before, and is neither screened nor checked.
   */
  readonly held?: ScheduleResult;
}

/** Everything that is known of one scenario: the one result that all screens and papers read. */
export interface Evaluation {
  readonly scenario: Scenario;
  /** Its letter: A for the first of the file. */
  readonly letter: string;
  readonly project: Project;
  readonly library: Library;
  readonly today: string;
  readonly findings: readonly Finding[];
  /** What trials found that it was given, of this plan or of an earlier one. */
  readonly trials?: ReviewTrials;
  /** The upright screen: screening, not a naval architect's study. Absent when it was not asked for or there is no hull. */
  readonly upright?: UprightResult;
  /** The tow: forces, days, route limits. Absent without a distance. */
  readonly tow?: TowView;
  /** What the figures rest on; absent when the document has faults that leave nothing to work out. */
  readonly estimate?: EstimateParts;
}

export interface EstimateParts {
  readonly input: EstimateInput;
  readonly items: readonly WorkItem[];
  readonly relationships: readonly ItemRelationship[];
  readonly work: WorkSheet;
  readonly planned: readonly PlannedItem[];
  readonly problem: PlanProblem;
  readonly schedule: ScheduleResult;
  /** Set when the dates are those of an earlier plan: not settled, not verified. */
  readonly datesHeld?: true;
  /** The hazardous-waste generator category by calendar month, from the schedule. */
  readonly generator?: GeneratorPlan;
  /** Clean-up goals left unmet: with any of them the scenario is not permittable. */
  readonly unmetGoals: readonly UnmetGoal[];
  /** Absent without a schedule: nothing has a date. */
  readonly money?: MoneySheet;
  /** What quotes put in place of lines, and what is to be said of them. */
  readonly quoted?: QuotedLines;
}

/**
 * The whole loop of one scenario, and the only conductor: the ship and its materials, the work sheet, the schedule,
 * the money sheet. Faults of the data are findings; what depends on them is absent.
 * @throws BugError only for faults of the program.
 */
export function evaluate(project: Project, options: EvaluateOptions): Evaluation {
  const library = options.library ?? shippedLibrary();
  const index =
    options.scenario === undefined
      ? 0
      : project.scenarios.findIndex(candidate => candidate.id === options.scenario);
  const scenario = project.scenarios[index];
  if (scenario === undefined)
    throw new BugError(`no scenario ${String(options.scenario)}: the caller asks before`);
  const frame = {
    scenario,
    letter: String.fromCharCode(65 + index),
    library,
    today: options.today,
    ...(options.trials && { trials: options.trials }),
  };
  const seen = seenBy(project, scenario);
  if (seen.project === undefined) return { ...frame, project, findings: seen.findings };
  const checked = checkedOnce(seen.project, library);
  if (checked.some(({ code, place }) => FATAL.has(code) || FATAL.has(`${code} ${place}`)))
    return { ...frame, project: seen.project, findings: checked };
  const estimate = estimateParts(seen.project, library, checked, options);
  if (options.held !== undefined) return { ...frame, project: seen.project, findings: checked, estimate };
  const upright = options.upright === false ? undefined : screenUpright(seen.project, estimate);
  const tow = towOf(seen.project, estimate);
  const findings = [
    ...checked,
    ...surveyOf(seen.project, library).findings,
    ...estimateFindings(estimate, checked),
    ...confidenceFindings(seen.project, estimate, options.simulated),
    ...ruleFindings(seen.project, estimate),
    ...ageingFindings(seen.project, library, estimate.items, options.today),
    ...(upright?.findings ?? []),
    ...(tow?.findings ?? []),
  ];
  return {
    ...frame,
    project: seen.project,
    findings,
    estimate,
    ...(upright === undefined ? {} : { upright }),
    ...(tow === undefined ? {} : { tow }),
  };
}

/** The documents last seen, by each scenario of them. */
const MOST_SEEN = 12;
const seenBy = keeping(MOST_SEEN, withScenario);
const checkedOnce = keeping(MOST_SEEN, checkProject);

/** Faults that leave nothing to work out, some of them at certain places only. */
const FATAL = new Set([
  'document/unknown-hull-type',
  'document/unknown-choice',
  'document/no-such-date',
  'items/loop',
  'items/names-nothing',
  'items/key-taken',
  'document/same-key-twice /ownItems',
  'document/same-key-twice /vessel/tanks',
  'document/same-key-twice /vessel/compartments',
]);

/** Everything that needs no date: scope, work sheet, and the schedule problem they make. */
const unscheduledParts = keeping(
  1,
  (
    project: Project,
    library: Library,
    checked: readonly Finding[],
    simulated: SimulatedContingency | undefined,
  ) => {
    const given = withTowDays(project, estimateInput(project, library, faultsOf(checked), simulated));
    const input = withSizedOpenings(project, given);
    const { drivers, ...scope } = scopeOfWork(project, library, input);
    const work = workSheet(input, drivers, scope.items);
    const planned = plannedItems(work);
    const problem = scheduleProblem({
      library,
      planned,
      relationships: scope.relationships,
      calendars: input.calendars,
      crewLimits: crewLimits(input),
      placeLimits: placeLimits(library, work, planned),
      adjustments: input.adjustments,
      seasons: input.options['season'] !== 'any-month',
      statusDate: input.statusDate,
    });
    return { input, ...scope, work, planned, problem };
  },
);

function estimateParts(
  project: Project,
  library: Library,
  checked: readonly Finding[],
  options: EvaluateOptions,
): EstimateParts {
  const unscheduled = unscheduledParts(project, library, checked, options.simulated);
  const effort = effortFor(unscheduled.problem, options);
  const { problem, schedule, datesHeld } = scheduledOrHeld(unscheduled.problem, effort, options.held);
  const priced =
    schedule.activities.length === 0 ? {} : pricedParts(project, unscheduled, schedule, options.today);
  return { ...unscheduled, problem, schedule, ...(datesHeld === undefined ? {} : { datesHeld }), ...priced };
}

function effortFor({ activities }: ScheduleProblem, { schedules, seed }: EvaluateOptions): Effort {
  return { schedules: schedules ?? usualSchedules(activities.length), seed };
}

/** Schedules a plan that was priced at held dates, in steps: afterwards it is evaluated without a search. */
export function schedulingSteps(
  { problem }: EstimateParts,
  options: EvaluateOptions,
): Generator<undefined, undefined, undefined> {
  return scheduledInSteps(problem, effortFor(problem, options));
}

type Unscheduled = ReturnType<typeof unscheduledParts>;
type Priced = Pick<EstimateParts, 'generator' | 'money' | 'quoted'>;

/**
 * The money sheet with the quotes that replace lines. What they replace is worked out by the same sheet, and does not
 * depend on them: it is made with the quotes that held last, and once more where others come out of it.
 */
const pricedParts = keeping(
  1,
  (
    project: Project,
    { input, work, planned }: Unscheduled,
    schedule: ScheduleResult,
    today: string,
  ): Priced => {
    const timings = itemTimings(planned, schedule, input.prices);
    const generator = hazardousWaste(input, work, datesOf(schedule));
    const generation = pricedGeneration(input.library, generator);
    const guessed = moneySheet(input, work, timings, lastQuotes, generation);
    const { quotes, findings } = quotedLines(project, guessed, today, planned);
    const isRight = isSameData([...quotes], [...lastQuotes]);
    if (!isRight) lastQuotes = quotes;
    const money = isRight ? guessed : moneySheet(input, work, timings, quotes, generation);
    return { generator, money, quoted: { quotes: lastQuotes, findings } };
  },
);

let lastQuotes: QuotedLines['quotes'] = new Map();

/** Items with what the work sheet found; one whose days are absent takes none in the schedule, and its money is absent. */
function plannedItems({ rows, items, result }: WorkSheet): PlannedItem[] {
  const days = result.numbers(items.columns.days);
  const crews = result.numbers(items.columns.crews);
  const people = result.numbers(items.columns.people);
  return rows.map((row, at) => ({
    item: row.item,
    days: days[at] ?? 0,
    unit: inCalendarDays(row) ? 'day' : 'work-day',
    crews: crews[at] ?? 0,
    crewSize: Math.ceil(people[at] ?? 0),
  }));
}

function estimateFindings(estimate: EstimateParts, before: readonly Finding[]): Finding[] {
  const scheduled = [...estimate.schedule.findings, ...goalFindings(estimate.unmetGoals)];
  if (estimate.money === undefined || estimate.quoted === undefined) return scheduled;
  const checked = verifiedOnce(estimate.problem, estimate.schedule);
  return [...scheduled, ...checked, ...estimate.quoted.findings, ...absentCauses(estimate.money, before)];
}
