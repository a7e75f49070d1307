import type { EstimateParts, EstimateSummary, Evaluation } from '../evaluation';
import type { Step } from '../sheet';
import { idOf, type SheetResult } from '../sheet';
import { onShip, unitWords, type Measures } from './measures';
import { DASH, decimalsFor, dollars, shownNumber } from './number-text';
import type { Shown } from './rows';

/** What a view is made from: one evaluation, and the reader's measures. */
export interface ViewContext {
  readonly evaluation: Evaluation;
  readonly measures: Measures;
}

/** The same when there is an estimate. */
export interface EstimateContext extends ViewContext {
  readonly parts: EstimateParts;
  /** The money in figures; absent without a schedule. */
  readonly summary: EstimateSummary | undefined;
}

export const ABSENT: Shown = { text: 'not yet', absent: true };

/** A figure of a sheet as text at a number of decimals, in the reader's measures; it opens its derivation. */
export function figureCell(
  context: ViewContext,
  result: SheetResult,
  step: Step,
  row?: string,
  decimals?: number,
): Shown & Required<Pick<Shown, 'why'>> {
  const figure = result.at(step, row);
  const why = idOf(step, row);
  if (figure.text === undefined) return { ...ABSENT, why };
  const shown = onShip(figure.text, figure.unit, context.measures);
  const places =
    shown.unit === figure.unit ? (decimals ?? decimalsFor(shown.value)) : decimalsFor(shown.value);
  return { text: shownNumber(shown.value, places), unit: unitWords(shown.unit), why };
}

/** Whole dollars that were rounded before, to be shown as they are. */
export function dollarCell(wholeDollars: number | undefined, why: string): Shown {
  if (wholeDollars === undefined) return { ...ABSENT, why };
  if (wholeDollars === 0) return { text: DASH, why };
  return { text: dollars(wholeDollars * 100).replace('$', ''), why };
}
