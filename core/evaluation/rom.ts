import { at, BugError, type Figure } from '../base';
import { dayOf } from '../calendar';
import { allocate, dollarsOf, fromCents, sumMoney, type Money } from '../money';
import { startingProject, type Project } from '../project';
import { STAGES, type Library, type StageKey } from '../work';
import { evaluate, type Evaluation } from './evaluate';
import type { JsonObject } from './json';
import { summarise, type EstimateSummary } from './summary';

/** How much of the job a rough order of magnitude covers. */
export const SCOPES = ['clean', 'clean-tow-sink', 'all'] as const;
export type Scope = (typeof SCOPES)[number];

/** A handful of particulars; everything else follows from the templates. */
export interface RomRequest {
  readonly hullType: string;
  readonly length: Figure;
  readonly built?: number;
  readonly lightship?: Figure;
  readonly tow?: Figure;
  readonly priceYear?: number;
  readonly acquisition?: Figure;
  readonly scope: Scope;
  readonly today: string;
  /** Passes the scheduler may spend. */
  readonly schedules?: number;
}

const SCOPE_STAGES: Readonly<Record<Scope, readonly StageKey[]>> = {
  clean: ['yard', 'clean-up', 'acceptance'],
  'clean-tow-sink': ['yard', 'clean-up', 'acceptance', 'topside', 'openings', 'tow', 'sinking'],
  all: STAGES,
};

/**
 * The range of an estimate from particulars alone: class 5, screening.
 * @source ASTM E2516 and AACE 18R-97 as two published summaries give them: low −20 to −50 %, high +30 to +100 %.
 */
const CLASS_5 = { low: 0.5, high: 2 } as const;

/** Passes spent on the schedule of a rough order: its dates are rough too. */
const ROM_SCHEDULES = 200;

/** The project that a rough order of magnitude is worked out from. */
export function romProject(library: Library, request: RomRequest): Project {
  const start = request.priceYear === undefined ? request.today : `${request.priceYear}-01-04`;
  const project = startingProject(library, {
    reader: 'grant',
    hullType: request.hullType,
    title: 'Rough order of magnitude',
    start,
    length: request.length,
    ...(request.built === undefined ? {} : { built: request.built }),
    ...(request.lightship === undefined ? {} : { lightship: request.lightship }),
    ...(request.tow === undefined ? {} : { tow: request.tow }),
    ...(request.priceYear === undefined ? {} : { fixedPriceYear: request.priceYear }),
  });
  if (request.acquisition === undefined) return project;
  const override = { at: 'work/title-and-assessment/purchase/feeFixed', figure: request.acquisition };
  return { ...project, rates: { ...project.rates, overrides: [override] } };
}

/** A rough order of magnitude as the command line prints it, and the evaluation behind it. */
export function roughOrder(
  library: Library,
  request: RomRequest,
): { json: JsonObject; evaluation: Evaluation } {
  const evaluation = evaluate(romProject(library, request), {
    today: request.today,
    seed: 1,
    schedules: request.schedules ?? ROM_SCHEDULES,
    library,
    upright: false,
  });
  const { estimate, findings } = evaluation;
  if (estimate?.money === undefined) return { json: { findings }, evaluation };
  const summary = summarise({ ...estimate, money: estimate.money });
  const byStage = scoped(summary, request.scope);
  if (byStage === undefined) return { json: { findings }, evaluation };
  const total = sumMoney(byStage.map(([, amount]) => amount));
  const json = {
    hullType: request.hullType,
    scope: request.scope,
    total: dollarsOf(total),
    low: dollarsOf(times(total, CLASS_5.low)),
    high: dollarsOf(times(total, CLASS_5.high)),
    estimateClass: 5,
    hours: hoursOf(summary, () => true),
    removalHours: hoursOf(summary, stage => stage === 'clean-up'),
    ...milestones(evaluation),
    byStage: Object.fromEntries(byStage.map(([stage, amount]) => [stage, dollarsOf(amount)])),
    taken: taken(evaluation),
    findings,
  };
  return { json, evaluation };
}

/** Stages of the scope at contract price; of the whole job the owner's own cost too. None while a line is absent. */
function scoped(summary: EstimateSummary, scope: Scope): [StageKey, Money][] | undefined {
  const stages = SCOPE_STAGES[scope].map((stage): [StageKey, (Money | undefined)[]] => [
    stage,
    summary.lines
      .filter(line => line.stage === stage && (scope === 'all' || line.contract))
      .map(line => line.total),
  ]);
  if (stages.some(([, totals]) => totals.includes(undefined))) return undefined;
  return stages.map(([stage, totals]) => [stage, sumMoney(totals.filter(total => total !== undefined))]);
}

function times(amount: Money, factor: number): Money {
  return at(allocate(fromCents(Math.abs(amount.cents) * 2), [factor, 2 - factor]), 0);
}

function hoursOf(summary: EstimateSummary, counts: (stage: StageKey) => boolean): number {
  const tenths = summary.lines
    .filter(line => counts(line.stage))
    .reduce((sum, line) => sum + Math.round((line.hours ?? 0) * 10), 0);
  return tenths / 10;
}

const DAYS_A_MONTH = 146097 / 4800;

/** Months from the start to the first yard day, from there to written acceptance, and from the start to the sinking. */
export function milestones({ estimate }: Evaluation): JsonObject {
  if (estimate?.schedule.start === undefined) return {};
  const { items, schedule } = estimate;
  const day = (text: string | undefined) => (text === undefined ? undefined : dayOf(text));
  const start = dayOf(estimate.schedule.start);
  const yard = schedule.activities.filter(activity =>
    items.some(item => item.id === activity.id && item.stage === 'yard' && item.calendar !== 'office'),
  );
  const firstYard = day(yard.map(activity => activity.start).sort()[0]);
  const accepted = day(finishOf(schedule.activities, 'acceptance-letter'));
  const sunk = day(
    finishOf(schedule.activities, 'sinking-by-flooding') ?? finishOf(schedule.activities, 'scuttling-firm'),
  );
  const months = (from: number | undefined, to: number | undefined) =>
    from === undefined || to === undefined ? undefined : Math.round(((to - from) / DAYS_A_MONTH) * 10) / 10;
  const found = {
    leadMonths: months(start, firstYard),
    preparationMonths: months(firstYard, accepted),
    monthsToSink: months(start, sunk),
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined));
}

function finishOf(
  activities: readonly { readonly id: string; readonly finish: string }[],
  id: string,
): string | undefined {
  return activities.find(activity => activity.id === id)?.finish;
}

/** What was taken from the templates because it was not given. */
function taken({ project, estimate }: Evaluation): JsonObject {
  if (estimate === undefined) throw new BugError('a rough order without an estimate');
  const { result, takeOff } = estimate.work;
  const measure = (key: 'length' | 'beam' | 'depth' | 'lightship' | 'tank-count') =>
    result.number(takeOff.measures[key]);
  return {
    built: project.vessel.built,
    plant: estimate.input.plant,
    length: measure('length'),
    beam: measure('beam'),
    depth: measure('depth'),
    lightshipTonnes: measure('lightship'),
    oilTanks: measure('tank-count'),
    towNauticalMiles: result.number(takeOff.measures['tow-distance']),
    options: estimate.input.options,
  };
}
