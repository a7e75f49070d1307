import type { Sheet, Step } from '../../../core/sheet';

/** From now on, the operations of a sheet's steps that are worked out in decimals, one a row, those behind first. */
export function inDecimals(sheet: Sheet): readonly string[] {
  const done: string[] = [];
  const seen = new Set<Step>();
  const visit = (step: Step): void => {
    if (seen.has(step)) return;
    seen.add(step);
    step.inputs.forEach(visit);
    const { kind } = step;
    const exact: typeof kind.exact = (values, row) => (done.push(kind.operation), kind.exact(values, row));
    Object.assign(step, { kind: { ...kind, exact } });
  };
  for (const table of sheet.tables) table.placed.forEach(visit);
  for (const block of sheet.blocks) block.entries().forEach(visit);
  return done;
}
