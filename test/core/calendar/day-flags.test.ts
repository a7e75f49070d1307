import { expect, it } from 'vitest';
import fc from 'fast-check';
import {
  dayFlags,
  dayKinds,
  dayOf,
  isoOf,
  spansOf,
  type WorkCalendar,
  type Weekday,
} from '../../../core/calendar';

const date = fc.integer({ min: 20000, max: 22000 }).map(isoOf);
const monthDay = fc.integer({ min: 0, max: 365 }).map(i => isoOf(dayOf('2000-01-01') + i).slice(5));
const calendar: fc.Arbitrary<WorkCalendar> = fc.record({
  id: fc.constant('c'),
  title: fc.constant('c'),
  weekdays: fc.subarray<Weekday>([1, 2, 3, 4, 5, 6, 7]),
  shiftHours: fc.constant(8),
  federalHolidays: fc.boolean(),
  holidays: fc.array(date, { maxLength: 3 }),
  closures: fc.array(
    fc.record({ id: fc.constant('x'), title: fc.constant('x'), from: monthDay, to: monthDay }),
    { maxLength: 2 },
  ),
  extraWorkDays: fc.array(date, { maxLength: 3 }),
});

it('laying out all days at once and asking day by day why a day is idle agree', () => {
  fc.assert(
    fc.property(calendar, fc.integer({ min: 20000, max: 22000 }), (given, first) => {
      const kindOf = dayKinds(given, first, first + 799);
      const flags = dayFlags(given, first, 800);
      expect([...flags]).toEqual(Array.from(flags, (_, i) => (kindOf(first + i) === 'worked' ? 1 : 0)));
    }),
    { numRuns: 60 },
  );
});

it('a hurricane season comes back every year, a winter spell runs across the year end', () => {
  const spells = (from: string, to: string) =>
    spansOf({ from, to }, dayOf('2027-01-10'), dayOf('2028-12-31')).map(
      ([a, b]) => `${isoOf(a)}/${isoOf(b)}`,
    );
  expect(spells('06-01', '11-30')).toEqual(['2027-06-01/2027-11-30', '2028-06-01/2028-11-30']);
  expect(spells('11-15', '02-29')).toEqual([
    '2026-11-15/2027-02-28',
    '2027-11-15/2028-02-29',
    '2028-11-15/2029-02-28',
  ]);
});
