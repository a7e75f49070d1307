import { dayOfCivil, daysInMonth, isoOf, type DayNumber } from './iso-date';
import { nthWeekday, weekdayOf, type Weekday } from './weekday';

/** One legal public holiday of the United States in one year. Dates are `YYYY-MM-DD`. */
export interface FederalHoliday {
  readonly id: string;
  readonly title: string;
  /** The holiday itself. */
  readonly date: string;
  /** The day not worked: Friday before for a Saturday, Monday after for a Sunday. May fall in the year before. */
  readonly observed: string;
}

type Rule = {
  readonly id: string;
  readonly title: string;
  readonly from?: number;
  readonly month: number;
} & ({ readonly day: number } | { readonly weekday: Weekday; readonly nth: number });

/** @source 5 U.S.C. 6103(a); Juneteenth added by Public Law 117-17, in force 17 June 2021. */
const RULES: readonly Rule[] = [
  { id: 'new-year', title: "New Year's Day", month: 1, day: 1 },
  { id: 'king', title: 'Birthday of Martin Luther King, Jr.', month: 1, weekday: 1, nth: 3 },
  { id: 'washington', title: "Washington's Birthday", month: 2, weekday: 1, nth: 3 },
  { id: 'memorial', title: 'Memorial Day', month: 5, weekday: 1, nth: -1 },
  { id: 'juneteenth', title: 'Juneteenth National Independence Day', from: 2021, month: 6, day: 19 },
  { id: 'independence', title: 'Independence Day', month: 7, day: 4 },
  { id: 'labor', title: 'Labor Day', month: 9, weekday: 1, nth: 1 },
  { id: 'columbus', title: 'Columbus Day', month: 10, weekday: 1, nth: 2 },
  { id: 'veterans', title: 'Veterans Day', month: 11, day: 11 },
  { id: 'thanksgiving', title: 'Thanksgiving Day', month: 11, weekday: 4, nth: 4 },
  { id: 'christmas', title: 'Christmas Day', month: 12, day: 25 },
];

/**
 * The federal holidays whose own date lies in a year (1971 on), in order, each with the day it is observed.
 * A holiday on a Saturday is observed on the Friday before, on a Sunday on the Monday after.
 * @source 5 U.S.C. 6103(a) and (b); Executive Order 11582 section 3 (1971) for the Sunday rule.
 * @example federalHolidays(2027)[4] is Juneteenth, date 2027-06-19, observed 2027-06-18
 */
export function federalHolidays(year: number): FederalHoliday[] {
  return RULES.filter(rule => year >= (rule.from ?? year)).map(rule => {
    const day = dateOf(rule, year);
    return { id: rule.id, title: rule.title, date: isoOf(day), observed: isoOf(observedOn(day)) };
  });
}

/** The days of a span on which the federal government observes a holiday. */
export function observedHolidayDays(firstYear: number, lastYear: number): Map<DayNumber, string> {
  const days = new Map<DayNumber, string>();
  for (let year = firstYear; year <= lastYear + 1; year++) {
    for (const rule of RULES)
      if (year >= (rule.from ?? year)) days.set(observedOn(dateOf(rule, year)), rule.title);
  }
  return days;
}

function dateOf(rule: Rule, year: number): DayNumber {
  if ('day' in rule) return dayOfCivil(year, rule.month, rule.day);
  return nthWeekday(dayOfCivil(year, rule.month, 1), daysInMonth(year, rule.month), rule.weekday, rule.nth);
}

function observedOn(day: DayNumber): DayNumber {
  const weekday = weekdayOf(day);
  return weekday === 6 ? day - 1 : weekday === 7 ? day + 1 : day;
}
