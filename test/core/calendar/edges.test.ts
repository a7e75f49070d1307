import { describe, expect, it } from 'vitest';
import {
  checkCalendar,
  checkClosure,
  dayFlags,
  dayOf,
  daysInMonth,
  expandCalendar,
  federalHolidays,
  isMonthDay,
  isoOf,
  keepSpans,
  liesIn,
  monthsBetween,
  nextWorkDay,
  observedHolidayDays,
  parseIsoDate,
  previousWorkDay,
  spansOf,
  type WorkCalendar,
} from '../../../core/calendar';
import { nthWeekday } from '../../../core/calendar/weekday';

const yard: WorkCalendar = {
  id: 'yard',
  title: 'Yard',
  weekdays: [1, 2, 3, 4, 5],
  shiftHours: 8,
  federalHolidays: false,
  holidays: [],
  closures: [],
  extraWorkDays: [],
};
const PLACE = '/calendars/yard';

describe('what is wrong with a calendar is told with its place, what it means and what to do', () => {
  it('no work day', () => {
    const idle: WorkCalendar = { ...yard, weekdays: [] };
    expect(checkCalendar(idle, PLACE)).toEqual([
      {
        code: 'calendar/no-work-day',
        weight: 'blocks',
        place: PLACE,
        message: 'Calendar Yard has no work day.',
        meaning: 'Nothing on this calendar can be scheduled.',
        remedy: 'Choose at least one day of the week.',
      },
    ]);
    expect(checkCalendar({ ...idle, extraWorkDays: ['2027-03-06'] }, PLACE)).toEqual([]);
  });

  it.each([0, -8, 24.1, NaN, Infinity])('a shift of %d h', shiftHours => {
    expect(checkCalendar({ ...yard, shiftHours }, PLACE)).toEqual([
      {
        code: 'calendar/shift-hours',
        weight: 'blocks',
        place: PLACE,
        message: `Calendar Yard has a shift of ${shiftHours} h.`,
        meaning: 'Hours cannot be turned into work days on this calendar.',
        remedy: 'Give the hours of one work day, above 0 and at most 24.',
      },
    ]);
  });

  it('a shift of the whole day is one', () => {
    expect(checkCalendar({ ...yard, shiftHours: 24 }, PLACE)).toEqual([]);
  });

  const badDate = (text: string) => ({
    code: 'calendar/date',
    weight: 'blocks',
    place: PLACE,
    message: `"${text}" is not a date.`,
    meaning: 'It shuts or opens no day, so nothing on this calendar is scheduled.',
    remedy: 'Write dates as YYYY-MM-DD; a day that comes back every year as MM-DD.',
  });

  it('a holiday and an extra work day that are no dates', () => {
    const calendar = { ...yard, holidays: ['2027-02-30', '2027-03-01'], extraWorkDays: ['soon'] };
    expect(checkCalendar(calendar, PLACE)).toEqual([badDate('2027-02-30'), badDate('soon')]);
  });

  it.each([
    ['06-01', '11-30', []],
    ['11-15', '02-29', []],
    ['2027-06-01', '2027-06-30', []],
    ['2027-06-01', '2027-06-01', []],
    ['06-01', '2027-11-30', ['06-01']],
    ['2027-06-01', '11-30', ['11-30']],
    ['13-01', '00-10', ['13-01', '00-10']],
  ] as const)('a closure from %s to %s', (from, to, bad) => {
    expect(checkClosure({ id: 'c', title: 'Port', from, to }, PLACE)).toEqual(bad.map(badDate));
  });

  it('a closure that ends before it begins', () => {
    const closure = { id: 'c', title: 'Port', from: '2027-06-02', to: '2027-06-01' };
    expect(checkClosure(closure, PLACE)).toEqual([
      {
        code: 'calendar/closure-order',
        weight: 'blocks',
        place: PLACE,
        message: 'Port ends on 2027-06-01, before it begins on 2027-06-02.',
        meaning: 'The closure shuts no day, so nothing on this calendar is scheduled.',
        remedy:
          'Exchange the two dates, or give both as a day of the year (MM-DD) for a spell across the year end.',
      },
    ]);
  });
});

describe('days of the year', () => {
  it.each(['01-01', '02-29', '04-30', '12-31'])('%s is one', text => expect(isMonthDay(text)).toBe(true));
  it.each(['00-10', '13-01', '01-00', '02-30', '04-31', '1-1', '01-011', '001-01', '2027-01-01', ''])(
    '"%s" is none',
    text => expect(isMonthDay(text)).toBe(false),
  );

  it('a spell of one day is that day of each year, not a year', () => {
    const day = { from: '07-04', to: '07-04' };
    expect(spansOf(day, dayOf('2027-01-01'), dayOf('2028-12-31')).map(spell => spell.map(isoOf))).toEqual([
      ['2027-07-04', '2027-07-04'],
      ['2028-07-04', '2028-07-04'],
    ]);
    expect(liesIn(dayOf('2027-07-05'), day)).toBe(false);
  });

  it('a spell with a year comes once, and counts only where it touches the days asked for', () => {
    const spell = { from: '2027-06-10', to: '2027-06-20' };
    const [from, to] = [dayOf(spell.from), dayOf(spell.to)];
    expect(spansOf(spell, from - 100, to + 100)).toEqual([[from, to]]);
    expect(spansOf(spell, to, to + 9)).toEqual([[from, to]]);
    expect(spansOf(spell, from - 9, from)).toEqual([[from, to]]);
    expect(spansOf(spell, to + 1, to + 9)).toEqual([]);
    expect(spansOf(spell, from - 9, from - 1)).toEqual([]);
    expect([from - 1, from, to, to + 1].map(day => liesIn(day, spell))).toEqual([false, true, true, false]);
    expect(liesIn(dayOf('2028-06-15'), spell)).toBe(false);
  });

  it('outside all of some spells no day is kept', () => {
    const first = dayOf('2027-06-01');
    const flags = Uint8Array.from([1, 1, 0, 1, 1, 1, 1, 1]);
    keepSpans(flags, first, [
      { from: '2027-06-02', to: '2027-06-03' },
      { from: '06-06', to: '06-07' },
    ]);
    expect([...flags]).toEqual([0, 1, 0, 0, 0, 1, 1, 0]);
    keepSpans(flags, first, []);
    expect([...flags]).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
  });
});

describe('flags of days', () => {
  const first = dayOf('2027-03-01');
  it('the first and the last day follow the same rules, and dates outside change nothing', () => {
    const calendar = {
      ...yard,
      holidays: ['2027-03-01', '2027-02-26', '2027-03-15'],
      extraWorkDays: ['2027-03-14', '2027-02-27', '2027-03-20'],
    };
    expect([...dayFlags(calendar, first, 14)]).toEqual([0, 1, 1, 1, 1, 0, 0, 1, 1, 1, 1, 1, 0, 1]);
  });

  it('an observed holiday of the next year shuts the last day of this one', () => {
    const days = observedHolidayDays(2027, 2027);
    // 1 January 2028 is a Saturday.
    expect(days.get(dayOf('2027-12-31'))).toBe("New Year's Day");
    expect([...dayFlags({ ...yard, federalHolidays: true }, dayOf('2027-12-30'), 2)]).toEqual([1, 0]);
  });

  it('a holiday that is younger than the year is none', () => {
    // 19 June 2020 was a Friday; the law is of 2021.
    expect(observedHolidayDays(2020, 2020).has(dayOf('2020-06-19'))).toBe(false);
    expect(federalHolidays(2020)).toHaveLength(10);
    expect(federalHolidays(2021)).toHaveLength(11);
  });
});

describe('work days laid out', () => {
  const calendar = expandCalendar(yard, dayOf('2027-03-01'), 14);
  it('a work day is the next and the previous one of itself', () => {
    const wednesday = dayOf('2027-03-03');
    expect(nextWorkDay(calendar, wednesday)).toBe(wednesday);
    expect(previousWorkDay(calendar, wednesday)).toBe(wednesday);
  });
  it('beside the first and the last work day there is none', () => {
    expect(nextWorkDay(calendar, dayOf('2027-03-13'))).toBeUndefined();
    const late = expandCalendar(yard, dayOf('2027-03-06'), 7);
    expect(previousWorkDay(late, dayOf('2027-03-07'))).toBeUndefined();
  });
});

describe('dates', () => {
  it('the last day of four hundred years is one: 29 February 2000, and 28 February 1900 the last of its month', () => {
    expect(isoOf(11016)).toBe('2000-02-29');
    expect(isoOf(11017)).toBe('2000-03-01');
    expect(isoOf(dayOf('1900-02-28') + 1)).toBe('1900-03-01');
  });
  it('the day 0 of a month is none', () => expect(parseIsoDate('2027-01-00')).toBeUndefined());
  it('December has 31 days', () => expect(daysInMonth(2027, 12)).toBe(31));
  it('within one month there is one month', () => {
    expect(monthsBetween(dayOf('2027-11-01'), dayOf('2027-11-30'))).toEqual(['2027-11']);
    expect(monthsBetween(dayOf('2027-11-30'), dayOf('2027-12-01'))).toEqual(['2027-11', '2027-12']);
  });
  it('weekdays of a month are counted from its end too', () => {
    // May 2027 has Mondays on 3, 10, 17, 24 and 31.
    const may = (nth: number) => isoOf(nthWeekday(dayOf('2027-05-01'), 31, 1, nth)).slice(8);
    expect([1, 2, 5, -1, -2, -5].map(may)).toEqual(['03', '10', '31', '31', '24', '03']);
  });
});
