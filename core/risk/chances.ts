import { valueAt } from '../base';
import { frontier, type FrontierPoint } from './frontier';
import { jointConfidence, jointSentence } from './joint';
import { orderStatistic, sorted } from './percentiles';
import type { SimulationResult } from './result';

/** The chance to end inside a budget and a date together, alone, and the line of budgets and dates as safe. */
export interface JointView {
  /** Share of runs inside both. */
  readonly joint: number;
  readonly sentence: string;
  /** Shares inside the money alone and inside the date alone; the joint share is below both. */
  readonly insideMoney: number;
  readonly insideDate: number;
}

/**
 * How sure a budget and a date are together.
 * @param budget dollars; @param date day number.
 * @source NASA Cost Estimating Handbook 4.0, appendix J (joint confidence level).
 */
export function jointView(result: SimulationResult, budget: number, date: number): JointView {
  const { total, finish } = result.samples;
  const joint = jointConfidence(total, finish, budget, date);
  return {
    joint,
    sentence: jointSentence(joint),
    insideMoney: jointConfidence(total, finish, budget, Infinity),
    insideDate: jointConfidence(total, finish, Infinity, date),
  };
}

/** A budget and a date that hold together. */
export interface SafePoint {
  readonly budget: number;
  /** Day number. */
  readonly finish: number;
  /** Share of runs inside both. */
  readonly joint: number;
}

/**
 * The budget and the date that hold together with a chance and are each about as safe as the other: the date is that
 * percentile of the finish, the lowest whole tenth of a hundredth, at which the same percentile of cost reaches the
 * chance; the budget is the least that reaches it by that date, a point of the line of equal chance.
 * @returns undefined where no run has an answer.
 */
export function evenlySafe(result: SimulationResult, share: number): SafePoint | undefined {
  const { total, finish } = result.samples;
  const [costs, dates] = [sorted(total), sorted(finish)];
  if (costs.length === 0) return undefined;
  const pointAt = (step: number): SafePoint => {
    const [budget, day] = [orderStatistic(costs, step / STEPS), orderStatistic(dates, step / STEPS)];
    return { budget, finish: day, joint: jointConfidence(total, finish, budget, day) };
  };
  let [low, high] = [Math.floor(share * STEPS), STEPS];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (pointAt(middle).joint < share - 1e-9) low = middle + 1;
    else high = middle;
  }
  const day = pointAt(high).finish;
  const inTime = sorted(total.filter((_, trial) => valueAt(finish, trial) <= day));
  const needed = Math.ceil(costs.length * share - 1e-9);
  const budget = valueAt(inTime, Math.max(1, needed) - 1);
  return { budget, finish: day, joint: jointConfidence(total, finish, budget, day) };
}

const STEPS = 1000;

/** Budgets and dates that hold together with the chance `p` (0 to 1). */
export function equalChanceLine(result: SimulationResult, p: number): FrontierPoint[] {
  return frontier(result.samples.total, result.samples.finish, p);
}

/** Chance that the project ends after a day number, such as the end of the grant period. */
export function chanceOfMissing(result: SimulationResult, day: number): number {
  return 1 - jointConfidence(result.samples.total, result.samples.finish, Infinity, day);
}
