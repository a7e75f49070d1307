import { BugError } from '../../base';
import { innerOf, type Inner } from '../inner';
import type { Operand, Run } from '../kind';
import type { SheetResult } from '../result';
import { Buffers } from './buffers';
import { liveCells, runOrder, varyingCells, type Varying } from './live';

/** What varies, what is wanted, and how many trials at a time. */
export interface ColumnOptions {
  /** By the id of a given, or of a figure carried from the sheet before: its values, one a trial, filled before each run. */
  readonly inputs: ReadonlyMap<string, Float64Array>;
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
  /** How many steps change from trial to trial. */
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
  const { batch, inputs } = options;
  for (const [id, array] of inputs)
    if (array.length < batch) throw new BugError(`${id} has fewer values than a batch`);
  const varying = varyingCells(inner.order, inputs);
  const live = liveCells(inner.order, varying);
  const kept = options.keep.map(id => ({ id, cell: result.cellOf(id) }));
  const sequence = runOrder(
    inner.order,
    live,
    varying,
    kept.map(k => k.cell),
  );
  const buffers = new Buffers(batch);
  const runs = bind({ inner, live, varying, buffers }, sequence, new Set(kept.map(k => k.cell)));
  const arrayOf = (cell: number): Float64Array =>
    varying.get(cell) ?? buffers.of(cell) ?? new Float64Array(batch).fill(constantOf(inner, cell));
  return {
    run: n => {
      if (n > batch) throw new BugError(`${n} trials do not fit a batch of ${batch}`);
      for (const run of runs) run(n);
    },
    kept: new Map(kept.map(({ id, cell }) => [id, arrayOf(cell)])),
    liveSteps: sequence.length,
    bytes: buffers.bytes,
  };
}

interface Binding {
  readonly inner: Inner;
  readonly live: Uint8Array;
  readonly varying: Varying;
  readonly buffers: Buffers;
}

/** Binds each live step to its arrays, lending arrays again after their last use. */
function bind(binding: Binding, sequence: readonly number[], kept: ReadonlySet<number>): Run[] {
  const { inner, buffers } = binding;
  const lastUse = new Map<number, number>();
  const operandsOf = (cell: number): readonly number[] => {
    const at = inner.order.at(cell);
    return at === undefined ? [] : inner.order.operands(at.step, at.row);
  };
  sequence.forEach((cell, i) => {
    for (const operand of operandsOf(cell)) lastUse.set(operand, i);
  });
  return sequence.map((cell, i) => {
    const at = inner.order.at(cell);
    if (at === undefined) throw new BugError(`cell ${cell} is not a cell of the sheet`);
    const operands = operandsOf(cell);
    const out = buffers.lend(cell);
    const run = at.step.kind.live(
      operands.map(operand => operandOf(binding, operand)),
      out,
    );
    for (const operand of new Set(operands)) {
      if (lastUse.get(operand) === i && !kept.has(operand) && buffers.of(operand)) buffers.giveBack(operand);
    }
    return run;
  });
}

function operandOf({ inner, live, varying, buffers }: Binding, cell: number): Operand {
  if (cell < 0 || live[cell] !== 1) return constantOf(inner, cell);
  const array = varying.get(cell) ?? buffers.of(cell);
  if (array === undefined) throw new BugError(`cell ${cell} is used before it is calculated`);
  return array;
}

function constantOf({ values }: Inner, cell: number): number {
  return values[cell]?.toNumber() ?? NaN;
}
