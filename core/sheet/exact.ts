import type { Value } from './decimal';
import { keepInner } from './inner';
import { Order, rowsOf } from './order';
import { SheetResult } from './result';
import type { Sheet } from './sheet';
import type { Step } from './step';

/**
 * Evaluates a sheet exactly, in decimals of 34 digits. Never throws for the user's data: a figure that cannot
 * be computed is absent, and `sheetFindings` tells why.
 */
export function evaluateSheet(sheet: Sheet): SheetResult {
  const order = new Order(sheet);
  const values = new Array<Value>(order.size).fill(undefined);
  let cell = 0;
  for (const step of order.steps) {
    const { kind } = step;
    const rows = rowsOf(step);
    if (kind.cells !== undefined) {
      for (let row = 0; row < rows; row++) {
        const operands = order.operands(step, row).map(operand => values[operand]);
        values[cell++] = kind.exact(operands, row);
      }
      continue;
    }
    const inRow = step.inputs.map(input => inRows(order, input));
    const operands = inRow.map(({ first }) => values[first]);
    for (let row = 0; row < rows; row++) {
      for (let i = 0; i < inRow.length; i++) {
        const input = inRow[i];
        if (input?.moves === 1) operands[i] = values[input.first + row];
      }
      values[cell++] = kind.exact(operands, row);
    }
  }
  const result = new SheetResult(sheet);
  keepInner(result, { order, values });
  return result;
}

/** Where an input's cells stand: its first, and whether each row has its own. */
function inRows(order: Order, input: Step): { readonly first: number; readonly moves: 0 | 1 } {
  return { first: order.cell(input, 0), moves: input.scope === undefined ? 0 : 1 };
}
