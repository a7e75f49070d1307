import { BugError, known, valueAt } from '../base';
import { stepOf } from './columns/kernels';
import type { Book } from './kind';
import type { Sheet } from './sheet';
import type { Step } from './step';

/** A step in one row. */
export interface Cell {
  readonly step: Step;
  readonly row: number;
}

/**
 * The steps of a sheet in the order of calculation, and a number for each step in each row. A step can only
 * name steps made before it, so the order needs no search for loops.
 */
export class Order implements Book {
  readonly steps: readonly Step[];
  /** How many cells there are. */
  readonly size: number;
  readonly #numbers = new Map<Step, number>();
  readonly #starts: Float64Array;

  constructor(sheet: Sheet) {
    const steps: Step[] = [];
    const starts: number[] = [];
    let next = 0;
    const visit = (step: Step): void => {
      if (this.#numbers.has(step)) return;
      for (const input of step.inputs) visit(input);
      this.#numbers.set(step, steps.length);
      steps.push(step);
      starts.push(next);
      next += rowsOf(step);
    };
    for (const table of sheet.tables) table.placed.forEach(visit);
    for (const block of sheet.blocks) block.entries().forEach(visit);
    this.steps = steps;
    this.size = next;
    this.#starts = Float64Array.from(starts);
  }

  /** The number of a step's cell in a row; a single value's is the same in every row. */
  cell(step: Step, row: number): number {
    const number = this.#numbers.get(step);
    if (number === undefined) return -1;
    const base = valueAt(this.#starts, number);
    return step.scope === undefined ? base : base + row;
  }

  /** The number of a step in the order of calculation. */
  numberOf(step: Step): number {
    return known(this.#numbers, step);
  }

  /** The step and row of a cell. @throws BugError when there is no such cell. */
  at(cell: number): Cell {
    const number = stepOf(this.#starts, cell);
    const [step, start] = [this.steps[number], this.#starts[number]];
    if (step === undefined || start === undefined)
      throw new BugError(`cell ${cell} is not a cell of the sheet`);
    return { step, row: cell - start };
  }

  /** The cells a step takes its operands from in a row; -1 for one that does not exist. */
  operands(step: Step, row: number): readonly number[] {
    if (step.kind.cells) return step.kind.cells(step, row, this);
    return step.inputs.map(input => this.cell(input, row));
  }
}

/** In how many rows a step is calculated. */
export function rowsOf(step: Step): number {
  return step.scope?.rows.length ?? 1;
}
