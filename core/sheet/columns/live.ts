import { at, BugError } from '../../base';
import type { Order } from '../order';
import { rowsOf } from '../order';
import { idIn } from '../result';
import type { Step } from '../step';
import type { SettledValues } from './settled';

/** The arrays of the cells that vary by trial from outside: givens, and figures carried from the sheet before. */
export type Varying = ReadonlyMap<number, Float64Array>;

/**
 * Finds the cells of the ids that vary.
 * @throws BugError when an id is neither a given of the sheet nor carried into it.
 */
export function varyingCells(order: Order, inputs: ReadonlyMap<string, Float64Array>): Varying {
  return cellsOf(order, inputs);
}

/**
 * The cells of givens and carried figures by their ids.
 * @throws BugError when an id is neither a given of the sheet nor carried into it.
 */
export function cellsOf<T>(order: Order, inputs: ReadonlyMap<string, T>): Map<number, T> {
  const varying = new Map<number, T>();
  const known = new Set<string>();
  for (const step of order.steps) {
    if (step.kind.givens === undefined && step.kind.carried === undefined) continue;
    for (let row = 0; row < rowsOf(step); row++) {
      const id = sourceId(step, row);
      const value = id === undefined ? undefined : inputs.get(id);
      if (id === undefined || value === undefined) continue;
      known.add(id);
      varying.set(order.cell(step, row), value);
    }
  }
  for (const id of inputs.keys())
    if (!known.has(id)) throw new BugError(`${id} is not a given of the sheet: it cannot vary`);
  return varying;
}

function sourceId(step: Step, row: number): string | undefined {
  return step.kind.carried ? step.kind.carried.id(row) : idIn(step, row);
}

/** For each cell whether it changes from trial to trial. */
export function liveCells(order: Order, varying: Varying): Uint8Array {
  const live = new Uint8Array(order.size);
  for (const cell of varying.keys()) live[cell] = 1;
  for (const step of order.steps) {
    for (let row = 0; row < rowsOf(step); row++) {
      if (order.operands(step, row).some(operand => live[operand] === 1)) live[order.cell(step, row)] = 1;
    }
  }
  return live;
}

/** For a live cell that only passes an operand on, the cell whose value it is; for any other cell itself. */
export type Roots = (cell: number) => number;

/** Steps of more operands are not compared with others: sums of whole columns, of which there are few. */
const MOST_OPERANDS_COMPARED = 6;

/**
 * Finds the live cells that pass an operand on unchanged, or that work out what another row has worked out from the
 * same operands, so that they need no array and no time. A cell whose operands all turn out not to vary is taken off
 * the live ones: its value stands in every trial.
 * @param settled the values of the cells that do not vary.
 */
export function passedOn(order: Order, live: Uint8Array, varying: Varying, settled: SettledValues): Roots {
  const constantOf = settled.valueOf;
  const roots = new Map<number, number>();
  for (const step of order.steps) {
    const worked = new Map<string, number>();
    for (let row = 0; row < rowsOf(step); row++) {
      const cell = order.cell(step, row);
      if (live[cell] !== 1 || varying.has(cell)) continue;
      const operands = order.operands(step, row).map(operand => roots.get(operand) ?? operand);
      const passed = step.kind.passes?.(
        operands.map(operand => (live[operand] === 1 ? undefined : constantOf(operand))),
      );
      if (passed !== undefined) roots.set(cell, at(operands, passed));
      else if (operands.every(operand => live[operand] !== 1)) {
        live[cell] = 0;
        settled.settle(cell, step, operands);
      } else if (operands.length <= MOST_OPERANDS_COMPARED) {
        const key = operands.map(o => (live[o] === 1 ? `${o}` : `=${constantOf(o)}`)).join();
        const twin = worked.get(key);
        if (twin === undefined) worked.set(key, cell);
        else roots.set(cell, twin);
      }
    }
  }
  return cell => roots.get(cell) ?? cell;
}

/**
 * The live cells that the kept ones need, operands before users, close to their users: what is calculated
 * last is used next, while it is still near.
 */
export function runOrder(
  order: Order,
  live: Uint8Array,
  varying: Varying,
  keep: readonly number[],
  rootOf: Roots,
): number[] {
  const sequence: number[] = [];
  const state = new Uint8Array(order.size);
  const open: number[] = [];
  for (const root of keep) {
    open.push(rootOf(root));
    for (let cell = open.at(-1); cell !== undefined; cell = open.at(-1)) {
      if (live[cell] !== 1 || varying.has(cell) || state[cell] === 2) {
        open.pop();
      } else if (state[cell] === 1) {
        state[cell] = 2;
        sequence.push(cell);
        open.pop();
      } else {
        state[cell] = 1;
        const { step, row } = order.at(cell);
        for (const operand of order.operands(step, row).toReversed()) open.push(rootOf(operand));
      }
    }
  }
  return sequence;
}
