import { frontier, type FrontierPoint } from './frontier';
import { jointConfidence, jointSentence } from './joint';
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

/** Budgets and dates that hold together with the chance `p` (0 to 1). */
export function equalChanceLine(result: SimulationResult, p: number): FrontierPoint[] {
  return frontier(result.samples.total, result.samples.finish, p);
}

/** Chance that the project ends after a day number, such as the end of the grant period. */
export function chanceOfMissing(result: SimulationResult, day: number): number {
  return 1 - jointConfidence(result.samples.total, result.samples.finish, Infinity, day);
}
