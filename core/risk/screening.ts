import { valueAt } from '../base';
import { momentsOf } from './moments';
import type { PreparedRun } from './prepared';
import type { Trials } from './trials';
import {
  actingClass,
  LEVEL_CLASSES,
  occurrenceLevels,
  uncertaintiesOf,
  type Uncertainty,
} from './uncertainties';

/** How a result moves with one uncertainty, read off the trials themselves. */
export interface Effect {
  /** Share of the variance that goes with the uncertainty (first order); noise can make it a little negative. */
  readonly share: number;
  /** Mean of the result at its low and its high end (lowest and highest tenth, or absent and present). */
  readonly atLow: number;
  readonly atHigh: number;
}

/** An uncertainty with its effects on cost and finish. */
export interface Screened {
  readonly uncertainty: Uncertainty;
  readonly total: Effect;
  readonly finish: Effect;
}

/** By uncertainty, by class: how many trials, and the sums of their cost and finish. */
const SUMS = 3;
const PER_UNCERTAINTY = SUMS * (LEVEL_CLASSES + 1);

/** Sums up one chunk of trials by the classes of every uncertainty, in the thread that ran it. */
export type ClassSums = (results: {
  readonly n: number;
  readonly total: Float64Array;
  readonly finish: Float64Array;
}) => Float64Array;

/** @param levels the levels of the chunk in hand, by id. */
export function classSums(prepared: PreparedRun, levels: ReadonlyMap<string, Float64Array>): ClassSums {
  const read = uncertaintiesOf(prepared).flatMap((u, i) => {
    const level = levels.get(u.id);
    const probability = u.kind === 'range' ? Infinity : u.probability;
    return level === undefined
      ? []
      : [
          {
            first: i * PER_UNCERTAINTY,
            level,
            occurrence: occurrenceLevels(u, levels) ?? level,
            probability,
          },
        ];
  });
  const size = (read.at(-1)?.first ?? -PER_UNCERTAINTY) + PER_UNCERTAINTY;
  return ({ n, total, finish }) => {
    const sums = new Float64Array(size);
    for (const { first, level, occurrence, probability } of read)
      for (let t = 0; t < n; t++) {
        const cost = valueAt(total, t);
        if (Number.isNaN(cost)) continue;
        const acts = valueAt(occurrence, t) < probability;
        const place = first + SUMS * (acts ? actingClass(valueAt(level, t)) : 0);
        sums[place] = valueAt(sums, place) + 1;
        sums[place + 1] = valueAt(sums, place + 1) + cost;
        sums[place + 2] = valueAt(sums, place + 2) + valueAt(finish, t);
      }
    return sums;
  };
}

/**
 * First look at every uncertainty by conditional means, at no further trials.
 * @param trials the trials of the plan from the first on (a run may have stopped early).
 * @source A. Saltelli et al., Global Sensitivity Analysis, 2008, section 1.2.10 (first-order effect from slices).
 */
export function screen(
  prepared: PreparedRun,
  { total, finish, classes }: Pick<Trials, 'total' | 'finish' | 'classes'>,
): Screened[] {
  const [cost, date] = [momentsOf(total), momentsOf(finish)];
  return uncertaintiesOf(prepared).map((uncertainty, i) => {
    const own = classes.subarray(i * PER_UNCERTAINTY, (i + 1) * PER_UNCERTAINTY);
    const every = (from: number) => own.filter((_, k) => k % SUMS === from);
    const count = every(0);
    return {
      uncertainty,
      total: effect(uncertainty, count, every(1), cost),
      finish: effect(uncertainty, count, every(2), date),
    };
  });
}

function effect(
  u: Uncertainty,
  count: Float64Array,
  sum: Float64Array,
  all: { count: number; mean: number; variance: number },
): Effect {
  let between = 0;
  let classes = 0;
  for (let k = 0; k < count.length; k++) {
    const n = valueAt(count, k);
    if (n === 0) continue;
    classes++;
    between += n * (valueAt(sum, k) / n - all.mean) ** 2;
  }
  const explained = between / (all.count * all.variance);
  const byChance = (classes - 1) / all.count;
  const share = all.variance > 0 ? (explained - byChance) / (1 - byChance) : 0;
  const [low, high] =
    u.probability < 1
      ? [
          [0, 1],
          [1, count.length],
        ]
      : [
          [1, 3],
          [count.length - 2, count.length],
        ];
  return { share, atLow: meanOver(count, sum, low), atHigh: meanOver(count, sum, high) };
}

function meanOver(count: Float64Array, sum: Float64Array, [from = 0, to = 0]: number[] = []): number {
  const add = (values: Float64Array) => values.subarray(from, to).reduce((a, b) => a + b, 0);
  return add(sum) / add(count);
}
