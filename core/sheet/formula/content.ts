import { BugError } from '../../base';
import { innerOf } from '../inner';
import { rowsOf } from '../order';
import type { Step } from '../step';
import type { StepUnit } from '../unit';
import type { EmitContext } from './emit';
import { formulaIn, patternOf } from './render';

/** How a number is shown. */
export interface NumberFormat {
  readonly kind: 'money' | 'number' | 'factor';
  /** Decimals to show; undefined for as many as there are. */
  readonly decimals: number | undefined;
}

/** What stands in a cell. */
export type CellContent =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'blank' }
  | { readonly kind: 'absent'; readonly text: typeof ABSENT_TEXT }
  | { readonly kind: 'input'; readonly value: number; readonly format: NumberFormat }
  | {
      readonly kind: 'formula';
      readonly formula: string;
      readonly result: number;
      readonly format: NumberFormat;
    };

/** What an absent figure reads in the workbook: never a blank, which would count as zero. */
export const ABSENT_TEXT = 'absent, see Findings';

/** The format of a unit. */
export function formatOf(unit: StepUnit, decimals: number | undefined): NumberFormat {
  if (unit === 'USD') return { kind: 'money', decimals: 2 };
  return { kind: unit === '1' ? 'factor' : 'number', decimals };
}

/** The contents of a placed step's cells, row by row from workbook row `first`. */
export function contentsOf(step: Step, context: EmitContext, first: number): CellContent[] {
  const inner = innerOf(context.result);
  const format = formatOf(step.unit, decimalsOf(step));
  const isGiven = step.kind.givens !== undefined;
  const pattern = isGiven || step.kind.texts ? undefined : patternOf(step, context.names);
  return Array.from({ length: rowsOf(step) }, (_, row): CellContent => {
    const text = step.kind.texts?.[row];
    if (step.kind.texts) return text === undefined ? { kind: 'blank' } : { kind: 'text', text };
    const cell = inner.order.cell(step, row);
    const number = inner.number(cell);
    if (number === undefined) {
      const matters = !isGiven || context.missing.has(cell);
      return matters ? { kind: 'absent', text: ABSENT_TEXT } : { kind: 'blank' };
    }
    if (!Number.isFinite(number))
      throw new BugError(`${inner.text(cell) ?? ''} does not fit a cell of a workbook`);
    if (pattern === undefined) return { kind: 'input', value: number, format };
    return { kind: 'formula', formula: formulaIn(pattern, first + row), result: number, format };
  });
}

/** The decimals that a step's rounding states; of givens, the most that a row has. */
function decimalsOf(step: Step): number | undefined {
  const { operation, settings, givens } = step.kind;
  if (operation === 'whole up') return 0;
  const digits = settings?.['digits'];
  if (typeof digits === 'number') return digits;
  return givens && Math.max(0, ...givens.map(given => given?.value?.split('.')[1]?.length ?? 0));
}
