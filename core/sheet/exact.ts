import { Again } from './again';
import { Inner, keepInner } from './inner';
import { Order, rowsOf } from './order';
import { ABSENT, Cells, operandOf } from './quick/cells';
import { SheetResult } from './result';
import type { Sheet } from './sheet';
import type { Step } from './step';

/**
 * Evaluates a sheet exactly: as decimals of 34 digits, and quickly where whole numbers and doubles leave no doubt of
 * them. Never throws for the user's data: a figure that cannot be computed is absent, and `sheetFindings` tells why.
 * A sheet with a memory works out only what has changed since it was last evaluated; the result is the same.
 */
export function evaluateSheet(sheet: Sheet): SheetResult {
  const order = new Order(sheet);
  const inner = new Inner(order, new Cells(order.size));
  const again = againOf(sheet, inner);
  let first = 0;
  order.steps.forEach((step, number) => {
    if (again?.takeWhole(step, number, first) !== true) {
      const rows = step.kind.cells === undefined ? again?.takeMost(step, number, first) : undefined;
      if (rows !== undefined) evaluateSome(inner, step, first, rows);
      else if (step.kind.cells === undefined)
        evaluateInRows(inner, step, {
          first,
          number,
          again: again?.isAllNew(step) === true ? undefined : again,
        });
      else evaluateAcross(inner, step, first);
      again?.compare(step, number, first, rows);
    }
    first += rowsOf(step);
  });
  sheet.memory?.evaluated.set(sheet.id, inner);
  const result = new SheetResult(sheet);
  keepInner(result, inner);
  return result;
}

/** What may be taken over from the evaluation before, when the sheet has the same steps. */
function againOf(sheet: Sheet, inner: Inner): Again | undefined {
  const before = sheet.memory?.evaluated.get(sheet.id);
  const again = before && new Again(inner, before);
  return again?.isAlike() === true ? again : undefined;
}

interface At {
  readonly first: number;
  readonly number: number;
  readonly again: Again | undefined;
}

/** A step whose operands stand in the same row. */
function evaluateInRows(inner: Inner, step: Step, { first, number, again }: At): void {
  const { order, cells } = inner;
  const { kind } = step;
  if (kind.quickColumn?.(cells, first) === true) return;
  const take = again?.cellTaker(step, number);
  const rows = rowsOf(step);
  const operands = step.inputs.map(input => order.cell(input, 0));
  const moving = movingOf(step);
  for (let row = 0; row < rows; row++) {
    const isTaken = take?.(operands, first + row, row) === true;
    if (!isTaken && kind.quick?.(cells, operands, first + row, row) !== true)
      cells.putExact(first + row, kind.exact(inner.values(operands), row));
    moveOn(operands, moving, 1);
  }
}

/** Which operands stand in rows, and so move on with the row. */
function movingOf(step: Step): number[] {
  const moving: number[] = [];
  step.inputs.forEach((input, i) => {
    if (input.scope !== undefined) moving.push(i);
  });
  return moving;
}

/** The operands so many rows further on. */
function moveOn(operands: number[], moving: readonly number[], rows: number): void {
  for (let k = 0; k < moving.length; k++) {
    const i = operandOf(moving, k);
    operands[i] = operandOf(operands, i) + rows;
  }
}

/** A step whose operands stand in the same row, in some rows. */
function evaluateSome(inner: Inner, step: Step, first: number, rows: readonly number[]): void {
  const { order, cells } = inner;
  const operands = step.inputs.map(input => order.cell(input, 0));
  const moving = movingOf(step);
  let at = 0;
  for (const row of rows) {
    moveOn(operands, moving, row - at);
    at = row;
    if (step.kind.quick?.(cells, operands, first + row, row) !== true)
      cells.putExact(first + row, step.kind.exact(inner.values(operands), row));
  }
}

/** A step that says itself which cells it takes. */
function evaluateAcross(inner: Inner, step: Step, first: number): void {
  const { order, cells } = inner;
  const { kind } = step;
  const rows = rowsOf(step);
  const one = [ABSENT];
  for (let row = 0; row < rows; row++) {
    if (kind.oneCell !== undefined) one[0] = kind.oneCell(step, row, order);
    const operands = kind.oneCell === undefined ? order.operands(step, row) : one;
    if (kind.quick?.(cells, operands, first + row, row) !== true)
      cells.putExact(first + row, kind.exact(inner.values(operands), row));
  }
}
