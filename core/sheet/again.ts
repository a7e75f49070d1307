import { at, isSameData } from '../base';
import type { Inner } from './inner';
import { rowsOf } from './order';
import { NEAR, operandOf } from './quick/cells';
import type { Step } from './step';

/** Takes over the cell of a row by its operands; false when it must be worked out. */
type CellTaker = (operands: readonly number[], cell: number, row: number) => boolean;

/** Whether two steps calculate the same from the steps of the same numbers. */
function isSameStep(
  a: Step,
  b: Step,
  numberOfA: (step: Step) => number,
  numberOfB: (step: Step) => number,
): boolean {
  if (a.kind.operation !== b.kind.operation || a.unit !== b.unit || a.inputs.length !== b.inputs.length)
    return false;
  if (a.home?.id !== b.home?.id || a.home?.key !== b.home?.key) return false;
  if (a.kind !== b.kind && !isSameData(a.kind.settings, b.kind.settings)) return false;
  for (let i = 0; i < a.inputs.length; i++)
    if (numberOfA(at(a.inputs, i)) !== numberOfB(at(b.inputs, i))) return false;
  return true;
}

/** Whether two steps are evaluated in the same rows of the same tables, and name rows by the same keys. */
function isInSameRows(a: Step, b: Step): boolean {
  return (
    a.scope === b.scope &&
    a.inputs.every(
      (input, i) => input.scope === b.inputs[i]?.scope && input.kind.texts === b.inputs[i]?.kind.texts,
    )
  );
}

/** So many rows are worked out one by one; of more the whole step is. */
function fewOf(step: Step): number {
  return rowsOf(step) / 4;
}

function hasSameGivens(a: Step, b: Step): boolean {
  return a.kind.givens !== undefined && a.kind.givens === b.kind.givens;
}

/** Whether two steps carry the same figures over, or none. */
function isCarriedTheSame(a: Step, b: Step): boolean {
  const [now, before] = [a.kind.carried, b.kind.carried];
  return now === undefined || (now.from === before?.from && now.step === before.step);
}

/**
 * What of an evaluation before can be taken over: where a step has the operands it had, its value is what it was. Cells
 * are compared by value, so that a change ends where it changes nothing more; a cell that is only near its exact value
 * counts as changed whenever it is worked out anew.
 */
export class Again {
  readonly #now: Inner;
  readonly #before: Inner;
  /** By cell of the present sheet: 1 where its value is not what it was. */
  readonly #changed: Uint8Array;
  /** Of the steps that changed the rows that did; where these are more than a few, the first of them. */
  readonly #changedSteps = new Map<Step, { readonly rows: readonly number[]; readonly count: number }>();

  constructor(now: Inner, before: Inner) {
    this.#now = now;
    this.#before = before;
    this.#changed = new Uint8Array(now.order.size);
  }

  /** Whether the sheet before has the same steps; rows may have come and gone. */
  isAlike(): boolean {
    const [a, b] = [this.#now.order, this.#before.order];
    const numberOfA = (step: Step) => a.numberOf(step);
    const numberOfB = (step: Step) => b.numberOf(step);
    return (
      a.steps.length === b.steps.length &&
      a.steps.every((step, i) => isSameStep(step, at(b.steps, i), numberOfA, numberOfB))
    );
  }

  /** Takes a step over whole when nothing it looks at has changed. @returns false when it must be worked out. */
  takeWhole(step: Step, number: number, first: number): boolean {
    const before = at(this.#before.order.steps, number);
    if (rowsOf(before) !== rowsOf(step) || step.kind.entry) return false;
    if (!isCarriedTheSame(step, before)) return false;
    const isLeaf = step.inputs.length === 0;
    if (isLeaf && !step.kind.carried && !hasSameGivens(step, before)) return false;
    const looksAtRows = isLeaf || step.kind.carried || step.kind.cells !== undefined;
    if (looksAtRows && !isInSameRows(step, before)) return false;
    if (step.inputs.some(input => this.#changedSteps.has(input))) return false;
    const from = this.#before.order.cell(before, 0);
    this.#now.cells.take(this.#before.cells, from, first, rowsOf(step));
    return true;
  }

  /**
   * Takes cells of a step over one by one, each when its operands in the row have not changed.
   * @returns undefined when every row must be worked out.
   */
  cellTaker(step: Step, number: number): CellTaker | undefined {
    if (step.inputs.length === 0 || step.kind.carried || step.kind.entry) return undefined;
    const before = at(this.#before.order.steps, number);
    const [from, rows] = [this.#before.order.cell(before, 0), rowsOf(before)];
    return (operands, cell, row) => {
      if (row >= rows) return false;
      for (let i = 0; i < operands.length; i++) if (this.#changed[operandOf(operands, i)] !== 0) return false;
      this.#now.cells.copy(cell, from + row, this.#before.cells);
      return true;
    };
  }

  /**
   * Takes a step over but for the rows in which its operands changed.
   * @returns those rows; undefined when every row must be looked at.
   */
  takeMost(step: Step, number: number, first: number): readonly number[] | undefined {
    const before = at(this.#before.order.steps, number);
    if (rowsOf(before) !== rowsOf(step) || step.scope === undefined) return undefined;
    if (step.inputs.length === 0 || step.kind.carried || step.kind.entry) return undefined;
    const rows = new Set<number>();
    for (const input of step.inputs) {
      const changed = this.#changedSteps.get(input);
      if (changed === undefined) continue;
      if (input.scope !== step.scope || changed.count > fewOf(step)) return undefined;
      for (const row of changed.rows) rows.add(row);
    }
    this.#now.cells.take(this.#before.cells, this.#before.order.cell(before, 0), first, rowsOf(step));
    return [...rows];
  }

  /** Marks what changed of a step that was worked out, in all rows or in those named. */
  compare(step: Step, number: number, first: number, worked?: readonly number[]): void {
    const before = at(this.#before.order.steps, number);
    const [from, rows] = [this.#before.order.cell(before, 0), rowsOf(before)];
    const changed: number[] = [];
    const few = fewOf(step);
    const looks = worked?.length ?? rowsOf(step);
    let count = 0;
    for (let i = 0; i < looks; i++) {
      const row = worked === undefined ? i : at(worked, i);
      if (row < rows && this.#isSame(first + row, from + row)) continue;
      this.#changed[first + row] = 1;
      count += 1;
      if (count <= few) changed.push(row);
    }
    if (count > 0 || rows !== rowsOf(step)) this.#changedSteps.set(step, { rows: changed, count });
  }

  /** Whether some operand of a step has changed in every row, so that no cell of it can be taken over. */
  isAllNew(step: Step): boolean {
    return step.inputs.some(input => {
      const changed = this.#changedSteps.get(input);
      return changed !== undefined && changed.count === rowsOf(input);
    });
  }

  #isSame(cell: number, before: number): boolean {
    const [now, was] = [this.#now.cells, this.#before.cells];
    const state = now.decimals[cell];
    if (state === undefined || state === NEAR || state !== was.decimals[before]) return false;
    return state < 0 || now.mantissa[cell] === was.mantissa[before];
  }
}
