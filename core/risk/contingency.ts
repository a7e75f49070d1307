import { at, valueAt } from '../base';
import { allocate, dollarsOf, fromCents, roundToCents } from '../money';
import { orderStatistic, sorted } from './percentiles';
import type { PreparedRun } from './prepared';
import type { SimulationResult } from './result';

/** Contingency at a chosen confidence, and each line's part of it. Dollars. */
export interface Contingency {
  /** The chosen share of runs, 0 to 1. */
  readonly confidence: number;
  /** The cost that so many runs do not exceed. */
  readonly budget: number;
  /** That cost less the plan total; 0 when the plan total already covers it. */
  readonly amount: number;
  /** By line, adding up to the amount to the cent; a line that brings the risk down gets none. */
  readonly lines: readonly { readonly line: string; readonly amount: number }[];
}

/**
 * Contingency at a confidence. A line's part is its mean excess over the plan plus its part in the spread of
 * the total (covariance with the total over the variance of the total), times what the confidence asks beyond
 * the mean.
 * @source D. Tasche, Capital allocation to business units and sub-portfolios: the Euler principle, 2008 (covariance split).
 */
export function contingencyAt(
  prepared: PreparedRun,
  result: SimulationResult,
  confidence: number,
): Contingency {
  const rising = sorted(result.samples.total);
  const budget = orderStatistic(rising, confidence);
  const missing = roundToCents(budget - prepared.plan.total);
  const amount = missing.cents > 0 ? missing : fromCents(0);
  const weights = amount.cents > 0 ? lineWeights(prepared, result, budget) : prepared.lines.map(() => 0);
  const parts = allocate(amount, weights);
  return {
    confidence,
    budget,
    amount: dollarsOf(amount),
    lines: prepared.lines.map((line, l) => ({ line, amount: dollarsOf(at(parts, l)) })),
  };
}

/** Unrounded parts before those below zero are left out; all equal when no line stands out. */
function lineWeights(prepared: PreparedRun, result: SimulationResult, budget: number): number[] {
  const { lineExcess, lineProduct } = result.samples;
  const n = result.trials - result.withoutAnswer;
  const meanExcess = result.cost.mean - prepared.plan.total;
  const variance = result.cost.standardDeviation ** 2;
  const beyond = budget - result.cost.mean;
  const weights = prepared.lines.map((_, l) => {
    const own = valueAt(lineExcess, l) / n;
    const covariance = valueAt(lineProduct, l) / n - own * meanExcess;
    return Math.max(0, own + (variance > 0 ? (covariance / variance) * beyond : 0));
  });
  return weights.some(w => w > 0) ? weights : prepared.lines.map(() => 1);
}
