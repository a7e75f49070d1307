import type { Value } from './decimal';
import type { FormulaContext, Term } from './formula/term';
import type { Given } from './given';
import type { LookUp } from './look-up';
import type { Cells } from './quick/cells';
import type { SheetResult } from './result';
import type { Step } from './step';

/** An operand of a live step in the column evaluator: one value, or one value a trial. */
export type Operand = number | Float64Array;

/** Calculates the first n trials of a live step. */
export type Run = (n: number) => void;

/** How steps find the cells of other rows. Cells are numbered; -1 is a row that does not exist. */
export interface Book {
  cell(step: Step, row: number): number;
}

/** An entry of a look-up table that a step used, for the explanation. */
export interface UsedEntry {
  readonly table: LookUp;
  readonly entry: number;
}

/**
 * What one kind of step means, in every reading of the sheet: exact value, columns of trials, workbook
 * formula, explanation. Nothing else in the program repeats it.
 */
export interface Kind {
  /** The operation as the explanation prints it. */
  readonly operation: string;
  /** Constants of the operation, printed beside it: rounding digits, settled decimals. */
  readonly settings?: Readonly<Record<string, string | number>>;
  /** The operands' cells, when they are not simply the inputs in the same row. */
  readonly cells?: (self: Step, row: number, book: Book) => readonly number[];
  /** The same where it is always one cell, without a list of it. */
  readonly oneCell?: (self: Step, row: number, book: Book) => number;
  /** The exact value; absent operands are the kind's own business. */
  readonly exact: (values: readonly Value[], row: number) => Value;
  /**
   * The same without decimals, straight into a cell, where whole numbers and doubles leave no doubt; false where they
   * do, and then `exact` decides. Operands are cells; one that does not exist is absent.
   */
  readonly quick?: (cells: Cells, operands: readonly number[], out: number, row: number) => boolean;
  /** The same for all rows at once, from the first cell on; false where `quick` and `exact` must look at each. Cells are absent before. */
  readonly quickColumn?: (cells: Cells, first: number) => boolean;
  /** Why the value is absent although the operands are there. */
  readonly reason?: (values: readonly Value[], row: number) => string;
  /** The same calculation over trials, into `out`; absent is NaN. */
  readonly live: (operands: readonly Operand[], out: Float64Array) => Run;
  /**
   * Which operand the step simply passes on in every trial, given those that do not vary (undefined for the
   * others): a link, a quote that is there, a condition that is settled. Such a step costs nothing.
   */
  readonly passes?: (constants: readonly (number | undefined)[]) => number | undefined;
  /** Rounding only: the same over the product of the operands, in one pass: one or two that vary. */
  readonly overProduct?: (factors: readonly Operand[], out: Float64Array) => Run;
  /** The same calculation as a workbook formula. */
  readonly formula: (context: FormulaContext) => Term;
  /** Inputs that the formula names twice: they must be placed. */
  readonly repeats?: readonly number[];
  /** Which operands the explanation shows; all unless stated. */
  readonly shown?: (values: readonly Value[]) => readonly number[];
  /** The look-up entry the value came from. */
  readonly entry?: (values: readonly Value[]) => UsedEntry | undefined;
  /** The calculation in words, from the titles of its inputs. */
  readonly words: (...titles: readonly string[]) => string;
  /** Leaves only: the given of each row. */
  readonly givens?: readonly (Given | undefined)[];
  /** Text leaves only: the text of each row. */
  readonly texts?: readonly (string | undefined)[];
  /** Values of a sheet that was run before: which, and the id of the figure for each row. */
  readonly carried?: {
    readonly from: SheetResult;
    readonly step: Step;
    readonly id: (row: number) => string | undefined;
  };
}
