import { BugError } from '../../base';
import { innerOf } from '../inner';
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

/** The content of a cell of a column, by the row of its table and its row in the workbook. */
export type ColumnContent = (row: number, workbookRow: number) => CellContent;

/** How the cells of a placed step are filled. Names that its formula uses are noted at once, cells made when asked for. */
export function columnContent(step: Step, context: EmitContext): ColumnContent {
  const { texts } = step.kind;
  if (texts)
    return row => {
      const text = texts[row];
      return text === undefined ? { kind: 'blank' } : { kind: 'text', text };
    };
  const inner = innerOf(context.result);
  const format = formatOf(step.unit, decimalsOf(step));
  const isGiven = step.kind.givens !== undefined;
  const pattern = isGiven ? undefined : patternOf(step, context.names);
  return (row, workbookRow) => {
    const cell = inner.order.cell(step, row);
    const number = inner.number(cell);
    if (number === undefined) {
      const matters = !isGiven || context.missing.has(cell);
      return matters ? { kind: 'absent', text: ABSENT_TEXT } : { kind: 'blank' };
    }
    if (!Number.isFinite(number))
      throw new BugError(`${inner.text(cell) ?? ''} does not fit a cell of a workbook`);
    if (pattern === undefined) return { kind: 'input', value: number, format };
    return { kind: 'formula', formula: formulaIn(pattern, workbookRow), result: number, format };
  };
}

/** The decimals that a step's rounding states; of givens, the most that a row has. */
function decimalsOf(step: Step): number | undefined {
  const { operation, settings, givens } = step.kind;
  if (operation === 'whole up') return 0;
  const digits = settings?.['digits'];
  if (typeof digits === 'number') return digits;
  return givens && Math.max(0, ...givens.map(given => given?.value?.split('.')[1]?.length ?? 0));
}
