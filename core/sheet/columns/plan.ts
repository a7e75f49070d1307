import { BugError } from '../../base';
import { innerOf } from '../inner';
import type { SheetResult } from '../result';
import { Binding } from './binding';
import { cellsOf, liveCells, passedOn, runOrder, varyingCells } from './live';
import { SettledValues } from './settled';

/** What varies, what is wanted, and how many trials at a time. */
export interface ColumnOptions {
  /** By the id of a given, or of a figure carried from the sheet before: its values, one a trial, filled before each run. */
  readonly inputs: ReadonlyMap<string, Float64Array>;
  /**
   * By the id of a given, or of a figure carried from the sheet before: the value it has in every trial, where that is
   * not the exact one.
   */
  readonly constants?: ReadonlyMap<string, number>;
  /** Ids of the figures wanted. Only these survive a run. */
  readonly keep: readonly string[];
  /** Trials a run at most, 128 to 256 is best; every input array has at least this length. */
  readonly batch: number;
}

/** A sheet prepared for many trials. */
export interface ColumnPlan {
  /** Calculates the first n trials from the inputs as they now stand. @throws BugError beyond the batch. */
  readonly run: (n: number) => void;
  /** The wanted figures, one value a trial, overwritten by the next run. Absent is NaN. */
  readonly kept: ReadonlyMap<string, Float64Array>;
  /** The wanted figures that change from trial to trial at all. */
  readonly varies: ReadonlySet<string>;
  /** How many steps change from trial to trial and are calculated for the wanted figures. */
  readonly liveSteps: number;
  /** Bytes of the arrays. */
  readonly bytes: number;
}

/**
 * Prepares the columns of trials of an evaluated sheet: steps that no varying input reaches are folded into
 * constants, the others run in small loops over a batch, with the same roundings as the exact evaluator.
 * @throws BugError when an id does not exist or an input is shorter than the batch.
 */
export function columns(result: SheetResult, options: ColumnOptions): ColumnPlan {
  const inner = innerOf(result);
  const { order } = inner;
  const { batch, inputs } = options;
  for (const [id, array] of inputs)
    if (array.length < batch) throw new BugError(`${id} has fewer values than a batch`);
  const varying = varyingCells(order, inputs);
  const live = liveCells(order, varying);
  const constants = cellsOf(order, options.constants ?? new Map<string, number>());
  const exactOf = (cell: number) => inner.number(cell) ?? NaN;
  const settled = new SettledValues(constants, exactOf);
  settled.settleAll(order, live);
  const constantOf = settled.valueOf;
  const rootOf = passedOn(order, live, varying, settled);
  const kept = options.keep.map(id => ({ id, cell: rootOf(result.cellOf(id)) }));
  const cells = kept.map(k => k.cell);
  const sequence = runOrder(order, live, varying, cells, rootOf);
  const binding = new Binding({ order, live, varying, rootOf, constantOf }, sequence, new Set(cells), batch);
  return {
    run: n => {
      if (n > batch) throw new BugError(`${n} trials do not fit a batch of ${batch}`);
      for (const run of binding.runs) run(n);
    },
    kept: new Map(kept.map(({ id, cell }) => [id, binding.arrayOf(cell)])),
    varies: new Set(kept.flatMap(({ id, cell }) => (varying.has(cell) || live[cell] === 1 ? [id] : []))),
    liveSteps: sequence.length,
    bytes: binding.bytes,
  };
}
