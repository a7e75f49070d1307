import { monthsFrom, sumCents, type Cents, type MonthAmount } from '../cash-flow';

const MONTHS_OF_A_QUARTER = 3;
const MONTHS_OF_A_YEAR = 12;
const LATER_YEARS = [1, 2, 3, 4];

/**
 * The four quarters of the first year from the month of the award's start. Money paid before it (pre-award cost
 * the grantor agreed to) stands in the first quarter.
 * @param start `YYYY-MM-DD`.
 */
export function quarters(amounts: readonly MonthAmount[], start: string): Cents[] {
  return [0, 1, 2, 3].map(quarter =>
    sumCents(
      amounts
        .filter(({ month }) => Math.floor(monthOfAward(month, start) / MONTHS_OF_A_QUARTER) === quarter)
        .map(({ amount }) => amount),
    ),
  );
}

/** The four funding years after the first; money paid later stands in the last. */
export function fundingYears(amounts: readonly MonthAmount[], start: string): Cents[] {
  return LATER_YEARS.map(year =>
    sumCents(
      amounts
        .filter(
          ({ month }) => Math.min(4, Math.floor(monthOfAward(month, start) / MONTHS_OF_A_YEAR)) === year,
        )
        .map(({ amount }) => amount),
    ),
  );
}

function monthOfAward(month: string, start: string): number {
  return Math.max(0, monthsFrom(start.slice(0, 7), month));
}
