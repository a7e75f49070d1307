import { BugError } from '../../../core/base';
import type { SheetResult } from '../../../core/sheet';
import type { Value } from '../../../core/sheet/decimal';
import { innerOf } from '../../../core/sheet/inner';
import { rowsOf } from '../../../core/sheet/order';

/** Every cell of a sheet worked out in decimals alone, step by step, by the exact rule of each kind and nothing else. */
export function inPlainDecimals(result: SheetResult, before?: readonly Value[]): Value[] {
  const { order } = innerOf(result);
  const values: Value[] = [];
  for (const step of order.steps) {
    for (let row = 0; row < rowsOf(step); row++) {
      const { carried } = step.kind;
      if (carried === undefined) {
        const operands = order.operands(step, row).map(cell => values[cell]);
        values.push(step.kind.exact(operands, row));
        continue;
      }
      const id = carried.id(row);
      if (before === undefined && id !== undefined)
        throw new BugError('a carried figure needs the sheet before');
      values.push(id === undefined ? undefined : before?.[carried.from.cellOf(id)]);
    }
  }
  return values;
}
