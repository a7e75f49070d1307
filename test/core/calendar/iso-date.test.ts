import { afterEach, describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  dayOf,
  isoOf,
  parseIsoDate,
  weekdayOf,
  addMonths,
  monthEnd,
  monthOf,
  monthsBetween,
} from '../../../core/calendar';

const homeZone = process.env['TZ'];
afterEach(() => {
  if (homeZone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = homeZone;
});

describe('iso dates', () => {
  // The oracle is the ECMAScript Date object in UTC (ECMA-262, 21.4.1), also proleptic Gregorian.
  it('day numbers and text agree with the platform calendar for every year 0001 to 9999', () => {
    fc.assert(
      fc.property(fc.integer({ min: -719162, max: 2932896 }), day => {
        expect(isoOf(day)).toBe(new Date(day * 86400000).toISOString().slice(0, 10));
        expect(parseIsoDate(isoOf(day))).toBe(day);
        expect(weekdayOf(day) % 7).toBe(new Date(day * 86400000).getUTCDay());
      }),
      { numRuns: 3000 },
    );
  });

  it('text that is not a date of the calendar is refused', () => {
    const bad = [
      '2027-02-29',
      '2100-02-29',
      '2027-13-01',
      '2027-00-10',
      '2027-04-31',
      '2027-4-1',
      '1e999',
      '',
      '2027-01-01T00:00',
    ];
    expect(bad.map(parseIsoDate)).toEqual(bad.map(() => undefined));
    expect(() => dayOf('2027-02-29')).toThrow(/not a date/);
    expect(parseIsoDate('2000-02-29')).toBe(11016);
  });

  it.each(['UTC', 'America/New_York', 'Pacific/Auckland'])(
    'dates are the same days in time zone %s',
    zone => {
      process.env['TZ'] = zone;
      expect([isoOf(dayOf('2027-03-14')), isoOf(dayOf('2027-11-07') + 1), dayOf('1970-01-01')]).toEqual([
        '2027-03-14',
        '2027-11-08',
        0,
      ]);
    },
  );

  it('months: name, end, and the same day of a later month', () => {
    expect(monthOf(dayOf('2027-02-14'))).toBe('2027-02');
    expect(isoOf(monthEnd(dayOf('2028-02-01')))).toBe('2028-02-29');
    expect(isoOf(addMonths(dayOf('2027-01-31'), 1))).toBe('2027-02-28');
    expect(isoOf(addMonths(dayOf('2027-01-31'), -2))).toBe('2026-11-30');
    expect(monthsBetween(dayOf('2027-11-30'), dayOf('2028-01-01'))).toEqual([
      '2027-11',
      '2027-12',
      '2028-01',
    ]);
  });
});
