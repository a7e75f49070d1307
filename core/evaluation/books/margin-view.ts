import { at, valueAt, type Finding } from '../../base';
import { bidMargin, breakEvenGrowth, marginAt, type BidMargin, type Margin } from '../../bid';
import { sumCents, type Cents } from '../../cash-flow';
import { roundToCents } from '../../money';
import {
  orderStatistic,
  sorted,
  TRIALS_PER_CHUNK,
  type PreparedRun,
  type SimulationResult,
} from '../../risk';
import type { Evaluation } from '../evaluate';
import type { PreparedEstimate } from '../risk';
import { bidView, type BidView } from './bid-view';

/** The margin of the bid: in the plan, and at the middle and the careful cost where they were simulated. */
export interface MarginView {
  readonly price?: Cents;
  /** The contractor's cost in the plan: the contract price less profit. */
  readonly plan?: Margin;
  /** By how much the plan cost may grow before the margin is gone, as a share of it. */
  readonly breakEvenGrowth?: number;
  /** Absent without a simulation of the contractor's cost. */
  readonly simulated?: BidMargin;
  readonly findings: readonly Finding[];
}

const PROFIT = 'profit';

/**
 * The margin of the base bid.
 * @param simulation of {@link contractorRun}, whose totals are the contractor's cost.
 */
export function marginView(evaluation: Evaluation, simulation?: SimulationResult): MarginView {
  const view = bidView(evaluation);
  const plan = planCost(view);
  const price = view.sheet?.baseBid;
  if (price === undefined || plan === undefined || price <= 0 || plan <= 0)
    return { findings: view.findings };
  const simulated = simulation && simulatedMargin(price, plan, simulation);
  return {
    price,
    plan: marginAt(price, plan),
    breakEvenGrowth: breakEvenGrowth(price, plan),
    ...(simulated && { simulated }),
    findings: simulated && simulated.atP80.margin < 0 ? [...view.findings, loss(simulated)] : view.findings,
  };
}

/** What the work costs the contractor in the plan: direct cost and every mark-up but profit. */
function planCost({ internal }: BidView): Cents | undefined {
  const built = internal?.buildUp;
  if (built === undefined) return undefined;
  const kept = built.markUps.filter(markUp => markUp.id === PROFIT).map(markUp => markUp.amount);
  return built.price - sumCents(kept);
}

function simulatedMargin(price: Cents, plan: Cents, { samples }: SimulationResult): BidMargin | undefined {
  const rising = sorted(samples.total);
  if (rising.length === 0) return undefined;
  const at = (share: number): Cents => roundToCents(orderStatistic(rising, share)).cents;
  const costs = [...rising].map(dollars => roundToCents(dollars).cents);
  return bidMargin(price, plan, { p50: at(0.5), p80: at(0.8) }, costs);
}

/**
 * The run of a simulation turned to the contractor's cost. The price is fixed, so whatever contract work comes to
 * beyond the plan, at its full price and with the events that strike it, is the contractor's: on the careful side,
 * since a part of that price is profit. The owner's own lines are left out.
 * @returns nothing while there is no bid.
 */
export function contractorRun(evaluation: Evaluation, { run }: PreparedEstimate): PreparedRun | undefined {
  const plan = planCost(bidView(evaluation));
  if (plan === undefined) return undefined;
  const contract = new Set(
    (evaluation.estimate?.items ?? []).filter(item => item.contract).map(item => item.id),
  );
  const own = run.lines.flatMap((line, position) => (contract.has(line) ? [position] : []));
  const planned = own.reduce((sum, position) => sum + at(run.plan.lines, position), 0);
  const total = new Float64Array(TRIALS_PER_CHUNK);
  return {
    ...run,
    plan: { ...run.plan, total: plan / 100 },
    events: run.events.map(event => ({
      ...event,
      costs: event.costs.filter(cost => contract.has(cost.line)),
    })),
    money: batch => {
      const answer = run.money(batch);
      for (let trial = 0; trial < batch.n; trial++) {
        let cost = 0;
        for (const position of own) cost += valueAt(at(answer.lines, position), trial);
        total[trial] = Math.round(plan + (cost - planned) * 100) / 100;
      }
      return { total, lines: answer.lines };
    },
  };
}

function loss({ atP80 }: BidMargin): Finding {
  return {
    code: 'bid/margin-gone',
    weight: 'warns',
    place: '/bid/margin',
    message: `At the cost that 80 in 100 runs do not exceed the bid loses ${(-atP80.share * 100).toFixed(1)} per cent of its price.`,
    meaning: 'The margin of the plan does not cover what the work may come to.',
    remedy:
      'Raise the price, agree on unit prices for what is uncertain, or leave the risk with the owner by an allowance.',
  };
}
