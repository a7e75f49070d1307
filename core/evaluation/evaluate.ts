import { BugError, type Finding } from '../base';
import {
  inCalendarDays,
  moneySheet,
  scheduleProblem,
  workSheet,
  type EstimateInput,
  type MoneySheet,
  type PlannedItem,
  type WorkSheet,
} from '../estimate';
import type { UprightResult } from '../flooding';
import { checkProject, knownItems, withScenario, type Project, type Scenario } from '../project';
import type { ScheduleProblem, ScheduleResult } from '../scheduling';
import { idOf, sheetFindings } from '../sheet';
import {
  chosenItems,
  itemRelationships,
  presentDrivers,
  type ItemRelationship,
  type Library,
  type WorkItem,
} from '../work';
import type { GeneratorPlan } from '../disposal';
import { ageingFindings } from './ageing';
import { estimateInput, faultsOf } from './estimate-input';
import { keeping } from './keeping';
import { datesOf, hazardousWaste, pricedGeneration } from './generator';
import { goalFindings, unmetGoals, type UnmetGoal } from './goals';
import { quotedLines, type QuotedLines } from './line-quotes';
import { placeLimits } from './place-limits';
import { confidenceFindings, type SimulatedContingency } from './risk/policy-contingency';
import { classedItems, noticeRelationships, ruleFindings } from './rules';
import { scheduledOrHeld, verifiedOnce } from './scheduled-once';
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
  /** Passes the scheduler may spend. */
  readonly schedules?: number;
  /** The scenario by id; the first of the file unless given. */
  readonly scenario?: string;
  readonly library?: Library;
  /** The contingency of a simulation of the same plan, where the project sets it by confidence. */
  readonly simulated?: SimulatedContingency;
  /** Whether the roll-over screen is run, a fifth of a second when the hull or its weights changed; it is unless told otherwise. */
  readonly upright?: boolean;
  /**
   * A schedule whose dates hold until the plan is scheduled anew: with it a plan that was not scheduled before is priced
   * at once, its dates not settled, and neither screened nor checked.
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
  /** The roll-over screen: screening, not a naval architect's study. Absent when it was not asked for or there is no hull. */
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
  readonly problem: ScheduleProblem;
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

/** Passes spent on a schedule unless told otherwise. */
export const DEFAULT_SCHEDULES = 1000;

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
    throw new BugError(`no scenario ${options.scenario ?? ''}: the caller asks before`);
  const frame = { scenario, letter: String.fromCharCode(65 + index), library, today: options.today };
  const seen = seenBy(project, scenario);
  if (seen.project === undefined) return { ...frame, project, findings: seen.findings };
  const checked = checkedOnce(seen.project, library);
  if (checked.some(finding => FATAL.has(finding.code)))
    return { ...frame, project: seen.project, findings: checked };
  const estimate = estimateParts(seen.project, library, checked, options);
  if (estimate.datesHeld === true) return { ...frame, project: seen.project, findings: checked, estimate };
  const upright = options.upright === false ? undefined : screenUpright(seen.project, estimate);
  const tow = towOf(seen.project, estimate);
  const findings = [
    ...checked,
    ...surveyOf(seen.project, library).findings,
    ...estimateFindings(estimate),
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

/** Faults that leave nothing to work out. */
const FATAL = new Set([
  'document/unknown-hull-type',
  'document/unknown-choice',
  'document/no-such-date',
  'items/loop',
  'items/names-nothing',
  'items/key-taken',
]);

function estimateParts(
  project: Project,
  library: Library,
  checked: readonly Finding[],
  options: EvaluateOptions,
): EstimateParts {
  const given = withTowDays(project, estimateInput(project, library, faultsOf(checked), options.simulated));
  const input = withSizedOpenings(project, given);
  const { ship, plant, years } = input;
  const measured = new Map(
    [...input.measured].flatMap(([id, given]): [string, string][] =>
      given.value === undefined ? [] : [[id, given.value]],
    ),
  );
  const drivers = presentDrivers(library.drivers, library.materials, {
    type: ship.type,
    plant,
    years,
    measured,
    presence: input.presence,
  });
  const include = new Map(
    project.items.flatMap((item): [string, boolean][] =>
      item.include === undefined ? [] : [[item.item, item.include]],
    ),
  );
  const all = classedItems(knownItems(project, library), library, project);
  const scope = { options: input.options, plant, drivers };
  const items = chosenItems(all, { ...scope, include });
  const would = chosenItems(all, { ...scope, include: new Map() });
  const relationships = [
    ...itemRelationships(all, items),
    ...noticeRelationships(library, items),
    ...ownRelationships(project, items),
  ];
  const work = workSheet(
    input,
    library.drivers.filter(driver => drivers.has(driver.id)),
    items,
  );
  const planned = plannedItems(work);
  const asked = scheduleProblem({
    library,
    planned,
    relationships,
    calendars: input.calendars,
    crewLimits: new Map(),
    placeLimits: placeLimits(library, work, planned),
    adjustments: input.adjustments,
    seasons: input.options['season'] !== 'any-month',
    statusDate: input.statusDate,
  });
  const effort = { schedules: options.schedules ?? DEFAULT_SCHEDULES, seed: options.seed };
  const { problem, schedule: scheduled, datesHeld } = scheduledOrHeld(asked, effort, options.held);
  const goals = unmetGoals(project, library, drivers, items, would);
  const parts = {
    input,
    items,
    relationships,
    work,
    planned,
    problem,
    schedule: scheduled,
    ...(datesHeld === undefined ? {} : { datesHeld }),
    unmetGoals: goals,
  };
  if (scheduled.activities.length === 0) return parts;
  return { ...parts, ...pricedParts(project, parts, options.today) };
}

/** The money sheet: once without quotes for the computed figures, and again when a chosen quote replaces any of them. */
function pricedParts(
  project: Project,
  { input, work, planned, schedule: scheduled }: EstimateParts,
  today: string,
): Pick<EstimateParts, 'generator' | 'money' | 'quoted'> {
  const timings = itemTimings(planned, scheduled, input.prices);
  const generator = hazardousWaste(input, work, datesOf(scheduled));
  const generation = pricedGeneration(input.library, generator);
  const computed = moneySheet(input, work, timings, NO_QUOTES, generation);
  const quoted = quotedLines(project, computed, today);
  if (quoted.quotes.size === 0) return { generator, money: computed, quoted };
  return { generator, money: moneySheet(input, work, timings, quoted.quotes, generation), quoted };
}

const NO_QUOTES: QuotedLines['quotes'] = new Map();

/** The project's own relationships among the items of the scenario. */
function ownRelationships(project: Project, items: readonly WorkItem[]): ItemRelationship[] {
  const isIn = new Set(items.map(item => item.id));
  return project.relationships
    .filter(({ from, to }) => isIn.has(from) && isIn.has(to))
    .map(({ from, to, kind, lag, maximumLag }) => ({
      from,
      to,
      kind,
      ...(lag && { lag }),
      ...(maximumLag && { maximumLag }),
    }));
}

/** Items with what the work sheet found; one whose days are absent takes none in the schedule, and its money is absent. */
function plannedItems(work: WorkSheet): PlannedItem[] {
  const { columns } = work.items;
  return work.rows.map(row => {
    const key = row.item.id;
    return {
      item: row.item,
      days: work.result.number(columns.days, key) ?? 0,
      unit: inCalendarDays(row) ? 'day' : 'work-day',
      crews: work.result.number(columns.crews, key) ?? 0,
      crewSize: Math.ceil(work.result.number(columns.people, key) ?? 0),
    };
  });
}

function estimateFindings(estimate: EstimateParts): Finding[] {
  const scheduled = [...estimate.schedule.findings, ...goalFindings(estimate.unmetGoals)];
  if (estimate.money === undefined) return scheduled;
  const checked = verifiedOnce(estimate.problem, estimate.schedule);
  return [
    ...scheduled,
    ...checked,
    ...(estimate.quoted?.findings ?? []),
    ...sheetFindings(estimate.money.result, [idOf(estimate.money.sums.total)]),
  ];
}
