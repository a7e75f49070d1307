import { at, valueAt, type Finding } from '../../base';
import { dollarsOf } from '../../money';
import { meanOf, TRIALS_PER_CHUNK, type Distribution, type PlanFigures, type PreparedRun } from '../../risk';
import { chainScheduler, type ChainScheduler } from '../../scheduling';
import type { Evaluation } from '../evaluate';
import { wholeSpan } from '../timing';
import type { WholeParts } from './parts';
import { rangedGivens, type RangedGiven } from './ranged-givens';
import type { Funding, RiskSection } from '../../project';
import { leftOutFindings, registerEvents } from './register';
import { riskDrivers } from './risk-drivers';
import { shippedRisk, type RiskFile } from './risk-file';
import { cashNeedOf } from './cash-need';
import { correlationsOf } from './correlations';
import { planLineCosts } from './line-costs';
import { idsThatMatter, idsWorthCarrying, likelyCashNeed, screenGivens, shapeOf } from './screen-givens';
import { faultyPlaces, riskSectionOf, withOwnRanges, withSection } from './section';
import { trialModel } from './trial-model';
import { weatherOf } from './weather';

/** What is simulated; everything unless told otherwise. */
export interface RiskChoices {
  /** The ranges of the givens; without them every given stands at its likely value. */
  readonly ranges?: boolean;
  /** Drivers, register events and weather. */
  readonly events?: boolean;
  readonly file?: RiskFile;
  /** In place of the section of the project. */
  readonly section?: RiskSection;
}

/** An estimate made ready for a simulation. */
export interface PreparedEstimate {
  readonly run: PreparedRun;
  /** The risk section it was made from, defaults filled in. */
  readonly section: RiskSection;
  /** Day number of the horizon start: a finish of `d` days ends on day `first + d - 1`. */
  readonly first: number;
  readonly liveSteps: number;
  /** Givens with a range, and those that are drawn; the others stand at their means. */
  readonly ranged: number;
  readonly drawn: number;
  /** Where each drawn given stands in the sheets, by its id. */
  readonly places: ReadonlyMap<string, string>;
}

/**
 * Makes an estimate ready for a simulation: both sheets as columns of trials around the schedule.
 * @returns the run, or the findings that say why there is none.
 */
export function prepareRisk(
  evaluation: Evaluation,
  choices: RiskChoices = {},
): { readonly prepared?: PreparedEstimate; readonly findings: readonly Finding[] } {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return { findings: [notWhole('there is no schedule')] };
  const parts: WholeParts = { ...estimate, money: estimate.money };
  const total = parts.money.result.money(parts.money.sums.total);
  if (total === undefined) return { findings: [notWhole('the total is absent')] };
  const scheduler = chainScheduler(parts.problem, parts.schedule);
  if (scheduler === undefined)
    return { findings: [notWhole('the plan shares crews in a way trials cannot follow')] };
  const faulty = faultyPlaces(evaluation.findings);
  const section = choices.section ?? riskSectionOf(evaluation.project);
  const file = choices.file ?? shippedRisk();
  return assemble(parts, scheduler, dollarsOf(total), {
    ranges: true,
    events: true,
    ...choices,
    file,
    section,
    faulty,
    funding: evaluation.project.funding,
  });
}

interface AllChoices extends Required<RiskChoices> {
  readonly faulty: (place: string) => boolean;
  readonly funding: Funding | undefined;
}

function assemble(
  parts: WholeParts,
  scheduler: ChainScheduler,
  total: number,
  choices: AllChoices,
): { readonly prepared: PreparedEstimate; readonly findings: readonly Finding[] } {
  const { events, section, faulty } = choices;
  const file = withSection(choices.file, section, faulty);
  const { givens: all, findings } = withOwnRanges(rangedGivens(parts, file.narrowings), section);
  const standby = Number(file.weather.standbyDays.value);
  const kept = withAllowance(parts, scheduler);
  const cash = cashNeedOf(parts, scheduler, choices.funding, standby);
  const screened = trialModel(parts, kept, all, standby);
  const effects = screenGivens(all, screened, kept);
  const matter = new Set([...idsThatMatter(effects), ...idsNamed(section)]);
  const moving = idsWorthCarrying(effects, total);
  const carried = all.filter(given => moving.has(given.id) || matter.has(given.id));
  const drawn = drawnGivens(parts, carried, matter, { ...choices, file });
  const model = trialModel(parts, scheduler, drawn.givens, standby, drawn.means, cash);
  const isDrawn = events && section.weather === 'drawn';
  const weather = isDrawn ? weatherOf(parts, scheduler, file.weather) : undefined;
  const run: PreparedRun = {
    inputs: drawn.inputs,
    drivers: drawn.drivers,
    events: events ? registerEvents(parts, file.events, section, faulty) : [],
    correlations: drawn.correlations,
    ...(weather === undefined ? {} : { weather }),
    lines: parts.work.rows.map(row => row.item.id),
    activities: scheduler.activities,
    plan: planFigures(parts, total, likelyCashNeed(screened, kept, cash)),
    columns: model.columns,
    work: ({ n }) => model.work(n),
    scheduler: weather === undefined ? kept : scheduler,
    money: batch => model.money(batch),
  };
  const prepared = {
    run,
    section,
    first: scheduler.first,
    liveSteps: model.liveSteps,
    ranged: all.length,
    drawn: run.inputs.filter(input => input.distribution.kind !== 'certain').length,
    places: new Map(drawn.givens.map(given => [given.id, at([...given.work, ...given.money], 0)])),
  };
  return { prepared, findings: [...findings, ...leftOutFindings(file.events, section)] };
}

function planFigures(parts: WholeParts, total: number, cashNeed: number | undefined): PlanFigures {
  const finish = wholeSpan(parts.schedule).calendarDays;
  const plan = { total, lines: planLineCosts(parts), finish };
  return cashNeed === undefined ? plan : { ...plan, cashNeed };
}

/** Which givens are drawn or moved by a driver, how, and where the others stand. */
function drawnGivens(
  parts: WholeParts,
  carried: readonly RangedGiven[],
  matter: ReadonlySet<string>,
  { ranges, events, section, file, faulty }: AllChoices,
) {
  const drivers = events ? riskDrivers(file.drivers, carried, parts.input.library) : [];
  const moved = new Set(drivers.flatMap(driver => driver.inputs));
  const isDrawn = (given: RangedGiven) => ranges && matter.has(given.id);
  const givens = carried.filter(given => isDrawn(given) || moved.has(given.id));
  const settled = ranges ? carried.filter(given => !givens.includes(given)) : [];
  const spread = (given: RangedGiven): Distribution => {
    if (isDrawn(given)) return shapeOf(given);
    return { kind: 'certain', value: ranges ? meanOf(shapeOf(given)) : given.likely };
  };
  const inputs = givens.map(given => {
    const survey = section.surveys.find((s, i) => s.given === given.id && !faulty(`/risk/surveys/${i}`));
    return {
      id: given.id,
      title: given.title,
      distribution: spread(given),
      moves: given.items,
      ...(survey && {
        survey: { cost: Number(survey.cost.value), rangeLeft: Number(survey.rangeLeft.value) },
      }),
    };
  });
  return {
    givens,
    means: new Map(settled.map(given => [given, meanOf(shapeOf(given))])),
    drivers,
    inputs,
    correlations: ranges ? correlationsOf(file, section, faulty, givens.filter(isDrawn)) : [],
  };
}

/** Givens the project says something about: they are drawn however little they do. */
function idsNamed({ ranges, surveys, correlations }: RiskSection): string[] {
  return [
    ...ranges.map(range => range.given),
    ...surveys.map(survey => survey.given),
    ...correlations.flatMap(({ first, second }) => [first, second]),
  ];
}

/** The scheduler of a run without weather: an operation holds its allowance, as in the plan. */
function withAllowance(parts: WholeParts, scheduler: ChainScheduler): ChainScheduler {
  const held = parts.problem.activities.map(a => {
    const allowance = a.consecutive?.weatherDays ?? 0;
    return allowance === 0 ? undefined : { allowance, days: new Float64Array(TRIALS_PER_CHUNK) };
  });
  const lengthened = (column: Float64Array, i: number): Float64Array => {
    const own = held[i];
    if (own === undefined) return column;
    for (let t = 0; t < own.days.length; t++) own.days[t] = valueAt(column, t) + own.allowance;
    return own.days;
  };
  return {
    ...scheduler,
    chunk: trials => {
      scheduler.chunk({ ...trials, durations: trials.durations.map(lengthened) });
    },
  };
}

function notWhole(why: string): Finding {
  return {
    code: 'risk/nothing-to-simulate',
    weight: 'blocks',
    place: '/risk',
    message: `The estimate is not simulated: ${why}.`,
    meaning: 'There is no confidence for the total and the date.',
    remedy: 'Mend the findings of the estimate first.',
  };
}
