export { civilOf, dayOf, dayOfCivil, daysInMonth, isoOf, parseIsoDate, type DayNumber } from './iso-date';
export { weekdayOf, type Weekday } from './weekday';
export { addMonths, monthEnd, monthOf, monthStart, monthWords, monthsBetween } from './month';
export { federalHolidays, observedHolidayDays, type FederalHoliday } from './federal-holidays';
export { isMonthDay, liesIn, spansOf, type DateSpan, type Season } from './season';
export { checkCalendar, checkClosure, type Closure, type DayKind, type WorkCalendar } from './work-calendar';
export {
  addWorkDays,
  countWorkDays,
  dayKinds,
  expandCalendar,
  expandFlags,
  isWorkDay,
  nextWorkDay,
  previousWorkDay,
  type ExpandedCalendar,
} from './expanded-calendar';
export { closeSpans, dayFlags, keepSpans } from './day-flags';
export { noticeBy } from './notice';
export { readTypedDate, type TypedDate } from './typed-date';
export { workDaysOfHours } from './shift';
