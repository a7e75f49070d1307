import type { Finding } from '../../base';
import { dollarsOf } from '../../money';
import {
  meanOf,
  TRIALS_PER_CHUNK,
  type Distribution,
  type PreparedRun,
  type RankCorrelation,
} from '../../risk';
import { chainScheduler, type ChainScheduler } from '../../scheduling';
import type { Evaluation } from '../evaluate';
import type { WholeParts } from './parts';
import { rangedGivens, type RangedGiven } from './ranged-givens';
import { registerEvents } from './register';
import { riskDrivers } from './risk-drivers';
import { shippedRisk, type RiskFile } from './risk-file';
import { planLineCosts } from './line-costs';
import { idsThatMatter, idsWorthCarrying, screenGivens, shapeOf } from './screen-givens';
import { trialModel } from './trial-model';
import { weatherOf } from './weather';

/** What is simulated; everything unless told otherwise. */
export interface RiskChoices {
  /** The ranges of the givens; without them every given stands at its likely value. */
  readonly ranges?: boolean;
  /** Drivers, register events and weather. */
  readonly events?: boolean;
  readonly file?: RiskFile;
}

/** An estimate made ready for a simulation. */
export interface PreparedEstimate {
  readonly run: PreparedRun;
  /** Day number of the horizon start: a finish of `d` days ends on day `first + d - 1`. */
  readonly first: number;
  readonly liveSteps: number;
  /** Givens with a range, and those that are drawn; the others stand at their means. */
  readonly ranged: number;
  readonly drawn: number;
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
  return { prepared: assemble(parts, scheduler, dollarsOf(total), choices), findings: [] };
}

function assemble(
  parts: WholeParts,
  scheduler: ChainScheduler,
  total: number,
  { ranges = true, events = true, file = shippedRisk() }: RiskChoices,
): PreparedEstimate {
  const all = rangedGivens(parts, file.narrowings);
  const standby = Number(file.weather.standbyDays.value);
  const kept = withAllowance(parts, scheduler);
  const effects = screenGivens(all, trialModel(parts, kept, all, standby), kept);
  const matter = idsThatMatter(effects);
  const moving = idsWorthCarrying(effects, total);
  const carried = all.filter(given => moving.has(given.id) || matter.has(given.id));
  const drivers = events ? riskDrivers(file.drivers, carried, parts.input.library) : [];
  const weather = events ? weatherOf(parts, scheduler, file.weather) : undefined;
  const moved = new Set(drivers.flatMap(driver => driver.inputs));
  const givens = carried.filter(given => (ranges && matter.has(given.id)) || moved.has(given.id));
  const settled = ranges ? carried.filter(given => !givens.includes(given)) : [];
  const means = new Map(settled.map(given => [given, meanOf(shapeOf(given))]));
  const model = trialModel(parts, scheduler, givens, standby, means);
  const spread = (given: RangedGiven): Distribution => {
    if (!ranges) return { kind: 'certain', value: given.likely };
    return matter.has(given.id) ? shapeOf(given) : { kind: 'certain', value: meanOf(shapeOf(given)) };
  };
  const run: PreparedRun = {
    inputs: givens.map(given => ({
      id: given.id,
      title: given.title,
      distribution: spread(given),
      moves: given.items,
    })),
    drivers,
    events: events ? registerEvents(parts, file.events) : [],
    correlations: ranges
      ? correlationsOf(
          file,
          givens.filter(given => matter.has(given.id)),
        )
      : [],
    ...(weather === undefined ? {} : { weather }),
    lines: parts.work.rows.map(row => row.item.id),
    activities: scheduler.activities,
    plan: { total, lines: planLineCosts(parts), finish: parts.schedule.calendarDays ?? Number.NaN },
    columns: model.columns,
    work: ({ n }) => model.work(n),
    scheduler: weather === undefined ? kept : scheduler,
    money: batch => model.money(batch),
  };
  return {
    run,
    first: scheduler.first,
    liveSteps: model.liveSteps,
    ranged: all.length,
    drawn: run.inputs.filter(input => input.distribution.kind !== 'certain').length,
  };
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
    for (let t = 0; t < own.days.length; t++) own.days[t] = (column[t] ?? Number.NaN) + own.allowance;
    return own.days;
  };
  return {
    ...scheduler,
    chunk: trials => {
      scheduler.chunk({ ...trials, durations: trials.durations.map(lengthened) });
    },
  };
}

function correlationsOf(file: RiskFile, drawn: readonly RangedGiven[]): RankCorrelation[] {
  const idOf = (column: string) => drawn.find(given => given.column === column)?.id;
  return file.correlations.flatMap(({ first, second, correlation }) => {
    const [a, b] = [idOf(first), idOf(second)];
    return a === undefined || b === undefined
      ? []
      : [{ first: a, second: b, correlation: Number(correlation.value), of: 'ranks' as const }];
  });
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
