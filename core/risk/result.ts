import { type Finding, valueAt } from '../base';
import type { DriverRow } from './drivers';
import { momentsOf } from './moments';
import { percentile, shareUpTo, sorted, type Percentile } from './percentiles';
import type { PreparedRun } from './prepared';
import { sCurve, type SCurvePoint } from './s-curve';
import type { Trials } from './trials';

/** How one result (cost in dollars, finish in day numbers, cash need in dollars) is spread over the trials. */
export interface Spread {
  readonly mean: number;
  readonly standardDeviation: number;
  /** P5, P10, P20 ... P90, P95, each with its 95 % interval. */
  readonly percentiles: readonly Percentile[];
  readonly curve: readonly SCurvePoint[];
  /** The figure of the plan and the share of trials that do not exceed it: "the plan figure is 43 in 100". */
  readonly plan: number | undefined;
  readonly planShare: number | undefined;
}

/** How often an activity drives the finish. */
export interface DrivingShare {
  readonly activity: string;
  readonly share: number;
}

/** What a simulation found. */
export interface SimulationResult {
  readonly seed: number;
  /** Trials asked for, and run before the stop rule was met. */
  readonly trialsAsked: number;
  readonly trials: number;
  /** Trials without a finite answer: left out of every figure, and a finding. */
  readonly withoutAnswer: number;
  readonly cost: Spread;
  readonly finish: Spread;
  readonly cashNeed: Spread | undefined;
  /** Chance that an operation needs a later season than planned. */
  readonly anotherSeason: number;
  /** Absent when the scheduler does not say what drives the finish. */
  readonly drivesFinish: readonly DrivingShare[] | undefined;
  /** By contribution to the variance of cost, largest first. */
  readonly drivers: readonly DriverRow[];
  readonly findings: readonly Finding[];
  /** The trials themselves, for joint confidence, frontier, contingency and charts. */
  readonly samples: Trials;
}

const SHARES = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];

/** Puts the result together. */
export function resultOf(
  prepared: PreparedRun,
  asked: { trials: number; seed: number },
  samples: Trials,
  drivers: readonly DriverRow[],
  findings: readonly Finding[],
): SimulationResult {
  const { plan, activities } = prepared;
  const { drives } = samples;
  const trials = samples.total.length;
  const whole = samples.total.filter(Number.isFinite).length;
  const missed = samples.missedSeason.reduce(
    (n, flag, t) => n + (Number.isFinite(samples.total[t]) ? flag : 0),
    0,
  );
  return {
    seed: asked.seed,
    trialsAsked: asked.trials,
    trials,
    withoutAnswer: trials - whole,
    cost: spread(samples.total, plan.total),
    finish: spread(samples.finish, plan.finish),
    cashNeed: samples.cashNeed === undefined ? undefined : spread(samples.cashNeed, plan.cashNeed),
    anotherSeason: missed / whole,
    drivesFinish:
      drives && activities.map((activity, i) => ({ activity, share: valueAt(drives, i) / whole })),
    drivers,
    findings: [...findings, ...withoutAnswerFindings(trials - whole, trials)],
    samples,
  };
}

function spread(values: Float64Array, plan: number | undefined): Spread {
  const rising = sorted(values);
  const { mean, variance } = momentsOf(rising);
  return {
    mean,
    standardDeviation: Math.sqrt(variance),
    percentiles: SHARES.map(share => percentile(rising, share)),
    curve: sCurve(rising),
    plan,
    planShare: plan === undefined ? undefined : shareUpTo(rising, plan),
  };
}

function withoutAnswerFindings(broken: number, trials: number): Finding[] {
  if (broken === 0) return [];
  return [
    {
      code: 'risk/trials-without-answer',
      weight: 'blocks',
      place: '/risk',
      message: `${broken} of ${trials} trials have no finite cost or date; no figure counts them.`,
      meaning: 'The percentiles describe only the trials that ended, so they are too favourable.',
      remedy:
        'Look for a month beyond the escalation table, a season that never opens, or a range that passes zero.',
    },
  ];
}
