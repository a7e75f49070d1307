import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  addWorkDays,
  checkCalendar,
  countWorkDays,
  dayKinds,
  dayOf,
  expandCalendar,
  isoOf,
  isWorkDay,
  liesIn,
  nextWorkDay,
  noticeBy,
  previousWorkDay,
  weekdayOf,
  workDaysOfHours,
  type WorkCalendar,
} from '../../../core/calendar';

const yard: WorkCalendar = {
  id: 'yard',
  title: 'Yard, five days',
  weekdays: [1, 2, 3, 4, 5],
  shiftHours: 8,
  federalHolidays: true,
  holidays: [],
  closures: [{ id: 'stop', title: 'Year-end stop', from: '12-24', to: '01-02' }],
  extraWorkDays: ['2027-07-10'],
};

describe('work calendar', () => {
  const laidOut = expandCalendar(yard, dayOf('2027-06-01'), 400);

  it('adds work days over a weekend, an observed holiday and the year-end stop', () => {
    const add = (date: string, n: number) => isoOf(addWorkDays(laidOut, dayOf(date), n) ?? 0);
    // 5 July 2027 is the observed Independence Day; Saturday 10 July is an extra work day.
    expect([
      add('2027-07-02', 0),
      add('2027-07-02', 1),
      add('2027-07-09', 1),
      add('2027-07-10', 1),
      add('2027-12-23', 1),
    ]).toEqual(['2027-07-02', '2027-07-06', '2027-07-10', '2027-07-12', '2028-01-03']);
  });

  it('says why a day is not worked', () => {
    const kindOf = dayKinds(yard, dayOf('2027-06-01'), dayOf('2028-02-01'));
    const days = ['2027-07-04', '2027-07-05', '2027-07-06', '2027-12-27', '2027-07-10'];
    expect(days.map(date => kindOf(dayOf(date)))).toEqual([
      'weekday',
      'holiday',
      'worked',
      'closure',
      'worked',
    ]);
  });

  it('counts as a day-by-day walk counts, and addition and counting undo each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 40 }), (offset, n) => {
        const day = dayOf('2027-06-01') + offset;
        let walked = day;
        for (let left = n; left > 0 || !isWorkDay(laidOut, walked); walked++)
          if (isWorkDay(laidOut, walked)) left--;
        expect(addWorkDays(laidOut, day, n)).toBe(walked);
        expect(countWorkDays(laidOut, day, walked)).toBe(n);
      }),
    );
  });

  it('finds the work day before and after an idle day, and knows the end of what is laid out', () => {
    expect(isoOf(nextWorkDay(laidOut, dayOf('2027-12-25')) ?? 0)).toBe('2028-01-03');
    expect(isoOf(previousWorkDay(laidOut, dayOf('2027-12-25')) ?? 0)).toBe('2027-12-23');
    expect(addWorkDays(laidOut, dayOf('2027-06-01'), 4000)).toBeUndefined();
    expect(() => isWorkDay(laidOut, dayOf('2026-01-01'))).toThrow(/outside/);
  });

  it('reports no work day, a shift of 0 h, a bad date and a closure in the wrong order', () => {
    const bad: WorkCalendar = {
      ...yard,
      weekdays: [],
      extraWorkDays: [],
      shiftHours: 0,
      holidays: ['2027-02-30'],
      closures: [{ id: 'x', title: 'Port closed', from: '2027-05-01', to: '2027-04-01' }],
    };
    expect(checkCalendar(bad, '/calendars/yard').map(f => f.code)).toEqual([
      'calendar/no-work-day',
      'calendar/shift-hours',
      'calendar/date',
      'calendar/closure-order',
    ]);
    expect(checkCalendar(yard, '/calendars/yard')).toEqual([]);
  });

  it('a season across the year end holds both sides; the end of February holds in every year', () => {
    const winter = { from: '11-15', to: '02-29' };
    const days = [
      '2027-11-14',
      '2027-11-15',
      '2028-01-01',
      '2028-02-29',
      '2028-03-01',
      '2027-02-28',
      '2027-03-01',
    ];
    expect(days.map(date => liesIn(dayOf(date), winter))).toEqual([
      false,
      true,
      true,
      true,
      false,
      true,
      false,
    ]);
    expect(liesIn(dayOf('2027-06-01'), { from: '06-01', to: '11-30' })).toBe(true);
  });
});

describe('notice', () => {
  // 40 CFR 61.141 and 61.145(b)(3)(i): 10 working days, Monday to Friday with holidays counted.
  it('counts Monday to Friday including holidays', () => {
    expect(isoOf(noticeBy(dayOf('2027-03-15'), 10))).toBe('2027-03-01');
    expect(isoOf(noticeBy(dayOf('2027-07-12'), 10))).toBe('2027-06-28');
  });
  it('ten working days before always lie on a weekday two weeks earlier, from a weekday', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10000, max: 40000 }), day => {
        fc.pre(weekdayOf(day) <= 5);
        expect(noticeBy(day, 10)).toBe(day - 14);
      }),
    );
  });
});

describe('work days of hours', () => {
  it('a begun work day counts, a whole one does not spill over', () => {
    expect([
      workDaysOfHours(1736, 6, yard),
      workDaysOfHours(24, 3, yard),
      workDaysOfHours(24.1, 3, yard),
      workDaysOfHours(0, 3, yard),
    ]).toEqual([37, 1, 2, 0]);
    expect(workDaysOfHours(0.1 * 3 * 80, 3, { shiftHours: 8 })).toBe(1);
  });
});
