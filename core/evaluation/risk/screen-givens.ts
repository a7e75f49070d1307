import { known, valueAt } from '../../base';
import { lognormalFromP10P90, TRIALS_PER_CHUNK, varianceOf, type Distribution } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import type { CashNeed } from './cash-need';
import type { RangedGiven } from './ranged-givens';
import type { TrialModel } from './trial-model';

/** What a given does alone: the variance it brings to cost and to the finish, by its two ends. */
export interface Effect {
  readonly id: string;
  readonly cost: number;
  readonly finish: number;
  /** Dollars between its two ends. */
  readonly swing: number;
}

/**
 * What is not known about a given. The ends of the library's ranges are the furthest seen, so most weight lies at the
 * likely value: a PERT, not a triangle, whose long upper side would lift the mean of every line.
 */
export function shapeOf(given: RangedGiven): Distribution {
  const { low, likely, high, shape = 'pert', outcomes = [] } = given;
  if (shape === 'uniform') return { kind: shape, low, high };
  if (shape === 'lognormal') return lognormalFromP10P90(low, high);
  if (shape === 'discrete')
    return {
      kind: shape,
      values: outcomes.map(outcome => Number(outcome.value)),
      probabilities: outcomes.map(outcome => Number(outcome.probability)),
    };
  return { kind: shape, low, likely, high };
}

/**
 * Moves one given at a time to its two ends, through both sheets and the schedule, all others at their likely values.
 * @source A. Saltelli et al., Global Sensitivity Analysis, 2008, section 2.1 (one factor at a time, as a screen only).
 */
export function screenGivens(
  givens: readonly RangedGiven[],
  model: TrialModel,
  scheduler: ChainScheduler,
): Effect[] {
  const effects: Effect[] = [];
  const perChunk = TRIALS_PER_CHUNK / 2;
  const run = trialsOf(model, scheduler);
  for (let from = 0; from < givens.length; from += perChunk) {
    const some = givens.slice(from, from + perChunk);
    for (const given of givens) model.columns.get(given.id)?.fill(given.likely);
    some.forEach((given, k) => {
      const column = known(model.columns, given.id);
      [column[2 * k], column[2 * k + 1]] = [given.low, given.high];
    });
    const { total, finish } = run(2 * some.length);
    some.forEach((given, k) => {
      const share = varianceOf(shapeOf(given)) / (given.high - given.low) ** 2;
      const swing = (of: Float64Array) => valueAt(of, 2 * k + 1) - valueAt(of, 2 * k);
      effects.push({
        id: given.id,
        cost: swing(total) ** 2 * share,
        finish: swing(finish) ** 2 * share,
        swing: Math.abs(swing(total)),
      });
    });
  }
  for (const given of givens) model.columns.get(given.id)?.fill(given.likely);
  return effects;
}

function trialsOf(model: TrialModel, scheduler: ChainScheduler) {
  const columns = () => scheduler.activities.map(() => new Float64Array(TRIALS_PER_CHUNK));
  const [starts, finishes, waits] = [columns(), columns(), columns()];
  const finish = new Float64Array(TRIALS_PER_CHUNK);
  return (n: number) => {
    const durations = model.work(n);
    scheduler.chunk({ n, durations, starts, finishes, finish });
    const batch = { n, inputs: model.columns, durations, starts, finishes, waits, asksCash: false };
    const { total, lines } = model.money(batch);
    return { total, finish, batch, lines };
  };
}

/** The greatest cash need with every given at its likely value: that of the plan. */
export function likelyCashNeed(
  model: TrialModel,
  scheduler: ChainScheduler,
  cashNeed: CashNeed | undefined,
): number | undefined {
  const { batch, lines } = trialsOf(model, scheduler)(1);
  return cashNeed?.(batch, lines)[0];
}

/** Share of the variance, of cost and of finish, that the givens drawn must explain, taken one at a time. */
const EXPLAINED = 0.995;

/** The ids of the givens that matter for cost or finish; the rest together bring less than half a hundredth. */
export function idsThatMatter(effects: readonly Effect[]): Set<string> {
  return new Set([...largest(effects, 'cost'), ...largest(effects, 'finish')]);
}

/** Share of the total that the swings of all givens left out may come to together. */
const NEXT_TO_NOTHING = 0.002;

/** The ids of the givens worth carrying in every trial: without those that next to nothing depends on. */
export function idsWorthCarrying(effects: readonly Effect[], total: number): Set<string> {
  const ids = new Set<string>();
  let left = 0;
  for (const effect of effects.toSorted((a, b) => a.swing - b.swing)) {
    left += effect.swing;
    if (effect.finish > 0 || left > NEXT_TO_NOTHING * Math.abs(total)) ids.add(effect.id);
  }
  return ids;
}

function largest(effects: readonly Effect[], by: 'cost' | 'finish'): string[] {
  const all = effects.filter(e => e[by] > 0).toSorted((a, b) => b[by] - a[by]);
  const whole = all.reduce((sum, e) => sum + e[by], 0);
  let explained = 0;
  const ids: string[] = [];
  for (const effect of all) {
    if (explained >= EXPLAINED * whole) break;
    explained += effect[by];
    ids.push(effect.id);
  }
  return ids;
}
