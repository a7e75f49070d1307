export type { CalendarChoices } from './calendars';
export type { Adjustment, EstimateInput, PriceChoices } from './inputs';
export { inCalendarDays } from './day-columns';
export { isSpan, scheduleProblem, type PlannedItem } from './schedule-problem';
export { workSheet, type WorkSheet } from './work-sheet';
