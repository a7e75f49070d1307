import type { Closure, WorkCalendar } from '../calendar';

/** What the project says about its days. */
export interface CalendarChoices {
  readonly start: string;
  readonly federalHolidays: boolean;
  readonly shiftHours: number;
  /** Days a week worked in the yard, 5 to 7. */
  readonly yardDaysAWeek: number;
  readonly closures: readonly (Closure & { readonly calendars: readonly string[] })[];
}

const WEEK = [1, 2, 3, 4, 5, 6, 7] as const;
const OFFICE_SHIFT_HOURS = 8;

/** The four calendars of a project: office, yard, sea, and the days that always count. */
export function projectCalendars(choices: CalendarChoices): Record<string, WorkCalendar> {
  const calendar = (
    id: string,
    title: string,
    days: number,
    shiftHours: number,
    holidays: boolean,
  ): WorkCalendar => ({
    id,
    title,
    weekdays: WEEK.slice(0, days),
    shiftHours,
    federalHolidays: holidays && choices.federalHolidays,
    holidays: [],
    closures: choices.closures
      .filter(closure => closure.calendars.includes(id))
      .map(({ calendars: _calendars, ...closure }) => closure),
    extraWorkDays: [],
  });
  return {
    office: calendar('office', 'Office days', 5, OFFICE_SHIFT_HOURS, true),
    yard: calendar('yard', 'Yard days', choices.yardDaysAWeek, choices.shiftHours, true),
    sea: calendar('sea', 'Days at sea', 7, choices.shiftHours, false),
    continuous: calendar('continuous', 'Every day', 7, choices.shiftHours, false),
  };
}
