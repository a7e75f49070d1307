import { moneySheet, workSheet, type EstimateInput, type ItemTiming, type LineQuote } from '../estimate';
import { datesOf, hazardousWaste, itemTimings, pricedGeneration, type EstimateParts } from '../evaluation';
import type { GroupKey } from './groups';

/** From which of two evaluations each group of changes is taken. */
export type Source = (group: GroupKey) => EstimateParts;

/**
 * The total when each group of changes is taken from one evaluation or the other: which work is done, how much of
 * it, how long it takes, and at what prices. An item that only one of them has brings its own dates.
 * @returns whole cents, or nothing when a figure is absent in this mixture.
 */
export function mixedTotal(parts: readonly [EstimateParts, EstimateParts], from: Source): number | undefined {
  const input = mixedInput(from);
  const work = workSheet(input, driversOf(parts, input), from('scope').items);
  const generator = hazardousWaste(input, work, mixedDates(parts, from));
  const quotes = from('price').quoted?.quotes ?? new Map<string, LineQuote>();
  const money = moneySheet(
    input,
    work,
    mixedTimings(parts, from),
    quotes,
    pricedGeneration(input.library, generator),
  );
  return money.result.money(money.sums.total)?.cents;
}

/** The input with each of its fields from the group it belongs to. */
function mixedInput(from: Source): EstimateInput {
  const [quantity, duration, price] = [from('quantity').input, from('duration').input, from('price').input];
  return {
    ...quantity,
    calendars: duration.calendars,
    shiftHours: duration.shiftHours,
    overtimeShare: price.overtimeShare,
    overrides: price.overrides,
    prices: price.prices,
  };
}

/** The drivers that either ship has, in the order of the library. */
function driversOf(
  parts: readonly EstimateParts[],
  input: EstimateInput,
): EstimateInput['library']['drivers'] {
  const present = new Set(parts.flatMap(({ work }) => work.drivers.scope.rows.map(row => row.key)));
  return input.library.drivers.filter(driver => present.has(driver.id));
}

/** The dates of the items: of the chosen schedule, and of the other where only that one has the item. */
function mixedDates([a, b]: readonly [EstimateParts, EstimateParts], from: Source) {
  const chosen = from('duration');
  const other = chosen === a ? b : a;
  return new Map([...datesOf(other.schedule), ...datesOf(chosen.schedule)]);
}

function mixedTimings(
  [a, b]: readonly [EstimateParts, EstimateParts],
  from: Source,
): Map<string, ItemTiming> {
  const chosen = from('duration');
  const other = chosen === a ? b : a;
  const { prices } = from('price').input;
  const timings = ({ planned, schedule }: EstimateParts) => itemTimings(planned, schedule, prices);
  return new Map([...timings(other), ...timings(chosen)]);
}
