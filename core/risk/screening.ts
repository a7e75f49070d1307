import { chunkCount, chunkSize, TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import { levelsOf } from './levels';
import { momentsOf } from './moments';
import type { PreparedRun } from './prepared';
import {
  LEVEL_CLASSES,
  levelClass,
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

/** Sums of one result by class of one uncertainty. */
interface ClassSums {
  readonly count: Float64Array;
  readonly total: Float64Array;
  readonly finish: Float64Array;
}

/**
 * First look at every uncertainty by conditional means, at no further trials.
 * @param total, finish the trials of the plan from the first on (a run may have stopped early).
 * @source A. Saltelli et al., Global Sensitivity Analysis, 2008, section 1.2.10 (first-order effect from slices).
 */
export function screen(
  prepared: PreparedRun,
  plan: TrialPlan,
  total: Float64Array,
  finish: Float64Array,
): Screened[] {
  const uncertainties = uncertaintiesOf(prepared);
  const levels = levelsOf(prepared, plan);
  const sums = uncertainties.map(emptySums);
  for (let chunk = 0; chunk < chunkCount({ ...plan, trials: total.length }); chunk++) {
    levels.fill(chunk);
    const first = chunk * TRIALS_PER_CHUNK;
    const results = {
      total: total.subarray(first, first + chunkSize(plan, chunk)),
      finish: finish.subarray(first),
    };
    for (const [i, u] of uncertainties.entries()) addChunk(u, sums[i], levels.byId, results);
  }
  const [cost, date] = [momentsOf(total), momentsOf(finish)];
  return uncertainties.map((uncertainty, i) => {
    const s = sums[i] ?? emptySums();
    return {
      uncertainty,
      total: effect(uncertainty, s.count, s.total, cost),
      finish: effect(uncertainty, s.count, s.finish, date),
    };
  });
}

function emptySums(): ClassSums {
  const zeros = () => new Float64Array(LEVEL_CLASSES + 1);
  return { count: zeros(), total: zeros(), finish: zeros() };
}

function addChunk(
  u: Uncertainty,
  sums: ClassSums | undefined,
  levels: ReadonlyMap<string, Float64Array>,
  results: { total: Float64Array; finish: Float64Array },
): void {
  const [level, occurrence] = [levels.get(u.id), occurrenceLevels(u, levels)];
  if (sums === undefined || level === undefined) return;
  for (let t = 0; t < results.total.length; t++) {
    const cost = results.total[t] ?? Number.NaN;
    if (Number.isNaN(cost)) continue;
    const k = levelClass(u, level[t] ?? 0, occurrence === undefined ? 0 : (occurrence[t] ?? 1));
    sums.count[k] = (sums.count[k] ?? 0) + 1;
    sums.total[k] = (sums.total[k] ?? 0) + cost;
    sums.finish[k] = (sums.finish[k] ?? 0) + (results.finish[t] ?? 0);
  }
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
    const n = count[k] ?? 0;
    if (n === 0) continue;
    classes++;
    between += n * ((sum[k] ?? 0) / n - all.mean) ** 2;
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
