import type { Finding } from '../../base';
import { dollarsOf } from '../../money';
import type { Project } from '../../project';
import {
  contingencyAt,
  shareUpTo,
  sorted,
  type Contingency,
  type PreparedRun,
  type SimulationResult,
} from '../../risk';
import type { Given } from '../../sheet';
import type { EstimateParts } from '../evaluate';

/** The contingency by the policy of the project, and how far it reaches among the runs. Dollars. */
export interface PolicyContingency {
  readonly policy: 'percentage' | 'confidence';
  /** Absent where the policy gives none. */
  readonly amount: number | undefined;
  readonly budget: number | undefined;
  /** The share of runs that the budget holds in. */
  readonly reaches: number | undefined;
  /** By line where the runs set it, adding up to the amount to the cent. */
  readonly lines: Contingency['lines'];
}

/** A percentage of the plan, or that level of the runs less the plan: never both. */
export function contingencyOf(
  { contingency }: Project,
  estimate: EstimateParts | undefined,
  run: PreparedRun,
  result: SimulationResult,
): PolicyContingency {
  const rising = sorted(result.samples.total);
  if (contingency.policy === 'confidence') {
    const { confidence } = contingency;
    if (confidence === undefined) return nothing('confidence');
    const found = contingencyAt(run, result, Number(confidence));
    const budget = Math.max(found.budget, run.plan.total);
    const { amount, lines } = found;
    return { policy: 'confidence', amount, budget, reaches: shareUpTo(rising, budget), lines };
  }
  const { money } = estimate ?? {};
  const [amount, budget] = [money?.sums.contingency, money?.sums.budget].map(
    step => step && money?.result.money(step),
  );
  if (amount === undefined || budget === undefined) return nothing('percentage');
  const whole = dollarsOf(budget);
  return {
    policy: 'percentage',
    amount: dollarsOf(amount),
    budget: whole,
    reaches: shareUpTo(rising, whole),
    lines: [],
  };
}

function nothing(policy: PolicyContingency['policy']): PolicyContingency {
  return { policy, amount: undefined, budget: undefined, reaches: undefined, lines: [] };
}

/** The contingency of a simulation, to be put into the estimate of the same plan. */
export interface SimulatedContingency {
  readonly confidence: number;
  readonly amount: number;
  readonly planTotal: number;
  readonly trials: number;
  readonly seed: number;
}

/** What an evaluation needs of a simulation to show contingency and budget at the confidence of the project. */
export function simulatedContingency(
  { contingency }: Project,
  run: PreparedRun,
  result: SimulationResult,
): SimulatedContingency | undefined {
  if (contingency.policy !== 'confidence' || contingency.confidence === undefined) return undefined;
  const confidence = Number(contingency.confidence);
  const { amount } = contingencyAt(run, result, confidence);
  return { confidence, amount, planTotal: run.plan.total, trials: result.trials, seed: result.seed };
}

/** Decimals of the share, enough for its amount to come out to the cent. */
const SHARE_DECIMALS = 14;

/** The contingency of a simulation as a share of the plan, as the money sheet takes it. */
export function simulatedShare({ confidence, amount, planTotal, trials, seed }: SimulatedContingency): Given {
  return {
    value: (amount / planTotal).toFixed(SHARE_DECIMALS),
    unit: '1',
    basis: 'judgement',
    source: `What ${Math.round(confidence * 100)} in 100 of ${trials} simulated runs stay within, less the plan (seed ${seed})`,
    place: '/contingency/confidence',
  };
}

/** A simulation counts for the confidence that it was asked at, and for no other. */
export function simulatedFor(
  { contingency: { policy, confidence } }: Project,
  simulated: SimulatedContingency | undefined,
): SimulatedContingency | undefined {
  return policy === 'confidence' && simulated?.confidence === Number(confidence) ? simulated : undefined;
}

/** A contingency by confidence needs a simulation at that confidence, and one of this plan. */
export function confidenceFindings(
  project: Project,
  estimate: EstimateParts,
  given: SimulatedContingency | undefined,
): Finding[] {
  if (project.contingency.policy !== 'confidence') return [];
  const simulated = simulatedFor(project, given);
  const total = estimate.money?.result.money(estimate.money.sums.total);
  const finding = (message: string, meaning: string): Finding => ({
    code: 'risk/contingency-not-simulated',
    weight: 'warns',
    place: '/contingency/confidence',
    message,
    meaning,
    remedy: 'Run the trials under Risk.',
  });
  if (simulated === undefined)
    return [
      finding(
        'Contingency follows a confidence of the simulation, and none has been run at it.',
        'Contingency and budget are absent; the total without them stands.',
      ),
    ];
  if (total === undefined || dollarsOf(total) === simulated.planTotal) return [];
  return [
    finding(
      'The plan has changed since it was simulated.',
      'Contingency and budget are those of the plan before, as a share of this one.',
    ),
  ];
}
