import type { Value } from './decimal';
import { keepInner } from './inner';
import { Order, rowsOf } from './order';
import { SheetResult } from './result';
import type { Sheet } from './sheet';

/**
 * Evaluates a sheet exactly, in decimals of 34 digits. Never throws for the user's data: a figure that cannot
 * be computed is absent, and `sheetFindings` tells why.
 */
export function evaluateSheet(sheet: Sheet): SheetResult {
  const order = new Order(sheet);
  const values = new Array<Value>(order.size).fill(undefined);
  let cell = 0;
  for (const step of order.steps) {
    const rows = rowsOf(step);
    for (let row = 0; row < rows; row++) {
      const operands: Value[] = [];
      for (const operand of order.operands(step, row)) operands.push(values[operand]);
      values[cell++] = step.kind.exact(operands, row);
    }
  }
  const result = new SheetResult(sheet);
  keepInner(result, { order, values });
  return result;
}
