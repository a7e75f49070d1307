import type { Evaluation } from '../evaluation';
import { saidIn } from '../units';
import type { Measures } from './measures';
import type { TableRows } from './rows';
import { choiceTable } from './sinking-tables';

/** What would widen the margin of the upright screen, priced by the estimate. */
export interface ChoiceRows {
  readonly table: TableRows;
  readonly message: string;
}

/** The priced choices of an evaluation; nothing without a screen. */
export function choiceRows({ upright }: Evaluation, measures: Measures): ChoiceRows | undefined {
  if (upright === undefined) return undefined;
  return { table: choiceTable(upright, measures), message: saidIn(upright.choices?.message ?? '', measures) };
}
