import { moneySheet, type LineQuote } from '../../estimate';
import { itemTimings, pricedGeneration, type EstimateParts } from '../../evaluation';
import type { Money } from '../../money';
import type { WholeEvaluation } from './input-cells';

/**
 * The total with the figures of one evaluation at the dates of another: what a workbook shows after a change, since it
 * cannot level crews. Months, days of spans, generator category and quotes of several lines stay as they were.
 * @returns nothing when the two have not the same work, or a figure is absent.
 */
export function totalAtDates(
  dates: WholeEvaluation['estimate'],
  figures: EstimateParts,
  changedQuotes: ReadonlySet<string>,
): Money | undefined {
  const idsOf = ({ items }: EstimateParts) => items.map(item => item.id).join(' ');
  if (idsOf(dates) !== idsOf(figures)) return undefined;
  const { input, work } = figures;
  const timings = itemTimings(dates.planned, dates.schedule, input.prices);
  const quotes = heldQuotes(dates, figures, changedQuotes);
  const generation = dates.generator && pricedGeneration(input.library, dates.generator);
  const money = moneySheet(input, work, timings, quotes, generation);
  return money.result.money(money.sums.total);
}

function heldQuotes(
  dates: EstimateParts,
  figures: EstimateParts,
  changed: ReadonlySet<string>,
): Map<string, LineQuote> {
  const of = ({ quoted }: EstimateParts) => [...(quoted?.quotes ?? [])];
  return new Map([
    ...of(dates).filter(([item]) => !changed.has(item)),
    ...of(figures).filter(([item]) => changed.has(item)),
  ]);
}
