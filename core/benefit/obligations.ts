import { allocateCents, laterMonth, sumCents, type Cents, type MonthAmount } from '../cash-flow';
import type { Provenance } from '../base';
import { presentValueFactor } from './present-value';
import { dollarsToCents, type BenefitRules } from './rules';

/** Something that must be done after the sinking: by whom, what it costs a year, from which year and how long. */
export interface Obligation {
  readonly id: string;
  readonly title: string;
  readonly party: string;
  readonly costPerYear: Cents;
  /** 1 is the first year after the sinking. */
  readonly firstYear: number;
  readonly years: number;
  readonly basis: Provenance;
}

/** Something that must be paid only if it happens, such as removal when the ship moves. It is no yearly cost. */
export interface ContingentObligation {
  readonly id: string;
  readonly title: string;
  readonly party: string;
  /** What it would cost; absent when nobody has estimated it. */
  readonly amount?: Cents;
}

/** Days of a year: the Julian year, common practice. */
export const DAYS_A_YEAR = 365.25;

/** Whole years of a number of days, at least one. */
export function wholeYears(days: number): number {
  return Math.max(1, Math.round(days / DAYS_A_YEAR));
}

/** The usual obligations, as starting values for the user. */
export function usualObligations(rules: BenefitRules): Obligation[] {
  return rules.obligations.map(({ id, title, party, firstYear, years, figure }) => ({
    id,
    title,
    party,
    costPerYear: dollarsToCents(figure.value),
    firstYear,
    years,
    basis: {
      basis: figure.basis,
      source: figure.source,
      ...(figure.year !== undefined && { year: figure.year }),
    },
  }));
}

/** What the obligations cost in each year after the sinking, from the first to the last. */
export function obligationsByYear(obligations: readonly Obligation[]): { year: number; amount: Cents }[] {
  const last = Math.max(0, ...obligations.map(one => one.firstYear + one.years - 1));
  return Array.from({ length: last }, (_, index) => index + 1).map(year => ({
    year,
    amount: sumCents(obligations.filter(one => isDue(one, year)).map(one => one.costPerYear)),
  }));
}

function isDue(obligation: Obligation, year: number): boolean {
  return year >= obligation.firstYear && year < obligation.firstYear + obligation.years;
}

/**
 * The obligations by month for the cash view, each year's cost over its twelve months. They stand beside the
 * budget and never in the grant total.
 * @param sinkingMonth `YYYY-MM`; year 1 starts in the month after it.
 */
export function obligationsByMonth(obligations: readonly Obligation[], sinkingMonth: string): MonthAmount[] {
  const twelfths = Array.from({ length: 12 }, () => 1);
  return obligationsByYear(obligations).flatMap(({ year, amount }) =>
    allocateCents(amount, twelfths).map((part, month) => ({
      month: laterMonth(sinkingMonth, (year - 1) * 12 + month + 1),
      amount: part,
    })),
  );
}

/** What the obligations of the first years are worth today, in cents. */
export function presentValueOfObligations(
  obligations: readonly Obligation[],
  rate: number,
  years: number,
): Cents {
  const parts = obligationsByYear(obligations)
    .filter(({ year }) => year <= years)
    .map(({ year, amount }) => amount * presentValueFactor(rate, year));
  return Math.round(parts.reduce((sum, part) => sum + part, 0));
}
