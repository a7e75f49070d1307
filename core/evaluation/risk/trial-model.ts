import { known, valueAt } from '../../base';
import { TRIALS_PER_CHUNK, type MoneyBatch, type MoneyColumns } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import { columns, idOf, type Sheet, type Step } from '../../sheet';
import type { WholeParts } from './parts';
import type { RangedGiven } from './ranged-givens';
import type { CashNeed } from './cash-need';
import { lineCosts } from './line-costs';
import { trialTiming } from './trial-timing';

/** Both sheets as columns of trials around the scheduler, bound to the draws of some givens. */
export interface TrialModel {
  /** By given: its values, filled before each call of `work`. */
  readonly columns: ReadonlyMap<string, Float64Array>;
  /** Steps of both sheets that are calculated in every trial. */
  readonly liveSteps: number;
  /** Durations by activity. */
  work(n: number): readonly Float64Array[];
  money(batch: MoneyBatch): MoneyColumns;
}

/**
 * Binds the sheets of an estimate to the draws of givens.
 * @param standby days a spread stands by for weather at most.
 * @param cashNeed asked for the trials that want it.
 * @param settled givens that stand at another value than the likely one in every trial, with that value.
 */
export function trialModel(
  parts: WholeParts,
  scheduler: ChainScheduler,
  givens: readonly RangedGiven[],
  standby: number,
  settled: ReadonlyMap<RangedGiven, number> = new Map(),
  cashNeed?: CashNeed,
): TrialModel {
  const { work, money, planned } = parts;
  const draws = new Map(
    givens.map(given => [given.id, new Float64Array(TRIALS_PER_CHUNK).fill(given.likely)]),
  );
  const inputsOf = (sheet: 'work' | 'money') =>
    givens.flatMap(given => given[sheet].flatMap(id => [[id, known(draws, given.id)] as const]));
  const constantsOf = (sheet: 'work' | 'money') =>
    [...settled].flatMap(([given, value]) => given[sheet].map(id => [id, value] as const));
  const dayIds = new Map(planned.map(({ item }) => [item.id, idOf(work.items.columns.days, item.id)]));
  const handed = carriedIds(money.sheet).filter(id => work.result.has(id));
  const first = columns(work.result, {
    inputs: new Map(inputsOf('work')),
    constants: new Map(constantsOf('work')),
    keep: [...new Set([...dayIds.values(), ...handed])],
    batch: TRIALS_PER_CHUNK,
  });
  const daysOf = (item: string) => known(first.kept, known(dayIds, item));
  const durations = wholeDays(parts, scheduler, daysOf);
  const obligations = new Map(planned.map(({ item }) => [item.id, daysOf(item.id)]));
  const timing = trialTiming(parts, scheduler, obligations, standby);
  const carriedOn = (id: string) => known(first.kept, id);
  const cost = lineCosts(parts);
  const second = columns(money.result, {
    inputs: new Map([
      ...inputsOf('money'),
      ...timing.inputs,
      ...handed.flatMap(id => (first.varies.has(id) ? [[id, carriedOn(id)] as const] : [])),
    ]),
    constants: new Map([
      ...constantsOf('money'),
      ...handed.flatMap(id => {
        const value = valueAt(carriedOn(id), 0);
        return first.varies.has(id) || value === work.result.figure(id).number ? [] : [[id, value] as const];
      }),
    ]),
    keep: cost.keep,
    batch: TRIALS_PER_CHUNK,
  });
  const answer = cost.answer(second.kept);
  return {
    columns: draws,
    liveSteps: first.liveSteps + second.liveSteps,
    work: n => {
      first.run(n);
      durations.fill(n);
      return durations.columns;
    },
    money: batch => {
      timing.fill(batch);
      second.run(batch.n);
      const costs = answer(batch.n);
      return batch.asksCash && cashNeed ? { ...costs, cashNeed: cashNeed(batch, costs.lines) } : costs;
    },
  };
}

/**
 * The durations of the activities, whole as a plan has them: to the nearest day, and no activity that takes time in
 * the plan takes none.
 */
function wholeDays(parts: WholeParts, scheduler: ChainScheduler, daysOf: (item: string) => Float64Array) {
  const plan = new Map(parts.planned.map(({ item, days }) => [item.id, days]));
  const pairs = scheduler.activities.map(id => ({
    from: daysOf(id),
    least: known(plan, id) > 0 ? 1 : 0,
    to: new Float64Array(TRIALS_PER_CHUNK),
  }));
  return {
    columns: pairs.map(pair => pair.to),
    fill: (n: number) => {
      for (const { from, least, to } of pairs)
        for (let t = 0; t < n; t++) to[t] = Math.max(least, Math.round(valueAt(from, t)));
    },
  };
}

/** The figures of the sheet before that a sheet carries on. */
function carriedIds(sheet: Sheet): string[] {
  const seen = new Set<Step>();
  const ids = new Set<string>();
  const walk = (step: Step): void => {
    if (seen.has(step)) return;
    seen.add(step);
    const { carried } = step.kind;
    if (carried !== undefined)
      for (let row = 0; row < (step.scope?.rows.length ?? 1); row++) {
        const id = carried.id(row);
        if (id !== undefined) ids.add(id);
      }
    for (const input of step.inputs) walk(input);
  };
  for (const table of sheet.tables) for (const step of table.placed) walk(step);
  for (const block of sheet.blocks) for (const step of block.entries()) walk(step);
  return [...ids];
}
