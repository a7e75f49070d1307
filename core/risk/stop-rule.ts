import { percentile, sorted } from './percentiles';

/** When a run is sure enough: the 95 % intervals of P50 and P80 of cost and finish are narrower than this. */
export interface StopRule {
  /** Dollars. */
  readonly costWidth: number;
  /** Calendar days. */
  readonly finishWidth: number;
  /** Trials to run at least; default 1,000. */
  readonly atLeast?: number;
}

const WATCHED = [0.5, 0.8];
const LEAST_TRIALS = 1000;

/** Whether the trials so far meet the rule. */
export function isSureEnough(rule: StopRule, total: Float64Array, finish: Float64Array): boolean {
  if (total.length < (rule.atLeast ?? LEAST_TRIALS)) return false;
  return isNarrow(total, rule.costWidth) && isNarrow(finish, rule.finishWidth);
}

function isNarrow(values: Float64Array, width: number): boolean {
  const rising = sorted(values);
  if (rising.length === 0) return false;
  return WATCHED.map(q => percentile(rising, q)).every(p => p.high - p.low <= width);
}
