import { dayOf, federalHolidays, isoOf, noticeBy, weekdayOf } from '../../../core/calendar';
import { checksOf, type OutsideCheck } from './check';

const observed = (year: number, id: string) => () =>
  federalHolidays(year).find(holiday => holiday.id === id)?.observed;
const notice = (start: string, days: number) => () => isoOf(noticeBy(dayOf(start), days));

export const dateChecks: readonly OutsideCheck[] = [
  ...checksOf('5 U.S.C. 6103 and the list of federal holidays of the Office of Personnel Management', [
    ["New Year's Day 2027, observed", '2027-01-01', observed(2027, 'new-year')],
    ['Birthday of Martin Luther King, Jr. 2027', '2027-01-18', observed(2027, 'king')],
    ["Washington's Birthday 2027", '2027-02-15', observed(2027, 'washington')],
    ['Memorial Day 2027', '2027-05-31', observed(2027, 'memorial')],
    ['Juneteenth 2027, a Saturday, observed', '2027-06-18', observed(2027, 'juneteenth')],
    ['Independence Day 2027, a Sunday, observed', '2027-07-05', observed(2027, 'independence')],
    ['Labor Day 2027', '2027-09-06', observed(2027, 'labor')],
    ['Columbus Day 2027', '2027-10-11', observed(2027, 'columbus')],
    ['Veterans Day 2027', '2027-11-11', observed(2027, 'veterans')],
    ['Thanksgiving Day 2027', '2027-11-25', observed(2027, 'thanksgiving')],
    ['Christmas Day 2027, a Saturday, observed', '2027-12-24', observed(2027, 'christmas')],
    ['Juneteenth before the law of 2021', 'nothing', observed(2020, 'juneteenth')],
  ]),
  ...checksOf('40 CFR 61.141 and 61.145(b): 10 working days, Monday to Friday, holidays included', [
    ['Notice for work from Monday 2027-03-15', '2027-03-01', notice('2027-03-15', 10)],
    ['Notice for work from Monday 2027-07-12, over a holiday', '2027-06-28', notice('2027-07-12', 10)],
  ]),
  ...checksOf('ISO 8601: weekdays numbered from Monday', [
    ['2000-01-01 was a Saturday', 6, () => weekdayOf(dayOf('2000-01-01'))],
    ['2027-01-04 is a Monday', 1, () => weekdayOf(dayOf('2027-01-04'))],
    ['2000-02-29 is followed by', '2000-03-01', () => isoOf(dayOf('2000-02-29') + 1)],
    ['2100-02-28 is followed by', '2100-03-01', () => isoOf(dayOf('2100-02-28') + 1)],
  ]),
];
