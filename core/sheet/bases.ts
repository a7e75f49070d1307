import { BASES, type Basis } from '../base';
import { innerOf } from './inner';
import { rowsOf } from './order';
import type { SheetResult } from './result';
import type { Step } from './step';

/** No given below. */
const NONE = -1;
const KEPT = new WeakMap<SheetResult, Int8Array>();

/**
 * The weakest basis below every figure of a sheet, in one pass in the order of calculation, carried figures of the
 * sheet before included. Same answer as `weakestBasis(why(result, id))`, for all figures at once.
 * @returns asks for a placed step in the row of a key; undefined when it rests on no given.
 */
export function basesOf(result: SheetResult): (id: string) => Basis | undefined {
  const ranks = ranksOf(result);
  return id => BASES[ranks[result.cellOf(id)] ?? NONE];
}

function ranksOf(result: SheetResult): Int8Array {
  const kept = KEPT.get(result);
  if (kept !== undefined) return kept;
  const { order } = innerOf(result);
  const ranks = new Int8Array(order.size).fill(NONE);
  for (const step of order.steps) {
    for (let row = 0; row < rowsOf(step); row++)
      ranks[order.cell(step, row)] = rankOf(result, ranks, step, row);
  }
  KEPT.set(result, ranks);
  return ranks;
}

function rankOf(result: SheetResult, ranks: Int8Array, step: Step, row: number): number {
  if (step.unit === 'text') return NONE;
  const given = step.kind.givens?.[row];
  if (given !== undefined)
    return given.basis === 'schedule' || given.source === 'by definition' ? NONE : BASES.indexOf(given.basis);
  const carried = step.kind.carried;
  const carriedId = carried?.id(row);
  if (carried !== undefined && carriedId !== undefined)
    return ranksOf(carried.from)[carried.from.cellOf(carriedId)] ?? NONE;
  return weakestOperand(result, ranks, step, row);
}

function weakestOperand(result: SheetResult, ranks: Int8Array, step: Step, row: number): number {
  const { order, values } = innerOf(result);
  const cells = order.operands(step, row);
  const operands =
    step.kind.shown === undefined && step.kind.entry === undefined ? [] : cells.map(cell => values[cell]);
  const shown = step.kind.shown?.(operands) ?? cells.keys();
  let weakest = NONE;
  for (const at of shown) weakest = Math.max(weakest, ranks[cells[at] ?? -1] ?? NONE);
  const used = step.kind.entry?.(operands);
  const entry = used?.table.entries[used.entry]?.given;
  if (entry !== undefined && entry.basis !== 'schedule')
    weakest = Math.max(weakest, BASES.indexOf(entry.basis));
  return weakest;
}
