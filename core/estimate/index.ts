export { projectCalendars, type CalendarChoices } from './calendars';
export { inCalendarDays } from './day-columns';
export type { GenerationPlan, GenerationTables } from './generation-table';
export { crewsAvailable, rateAt, type Adjustment, type EstimateInput, type PriceChoices } from './inputs';
export type { LineQuote } from './line-table';
export { moneySheet, stageTitle, type LineColumns, type MoneySheet } from './money-sheet';
export { monthsFrom } from './price-level';
export {
  isObligation,
  isSpan,
  scheduleProblem,
  type PlannedItem,
  type PlanProblem,
} from './schedule-problem';
export type { ItemTiming } from './timing-table';
export { workSheet, type WorkSheet } from './work-sheet';
