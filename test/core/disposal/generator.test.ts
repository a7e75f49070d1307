import { describe, expect, test } from 'vitest';
import { isoOf, type WorkCalendar } from '../../../core/calendar';
import {
  generatorCategory,
  generatorLimits,
  generatorPlan,
  pickUps,
  plannedEvent,
  workedDays,
  type Generation,
} from '../../../core/disposal';
import { shippedLibrary } from '../../../core/evaluation';

const library = shippedLibrary();
const limits = generatorLimits(library.tripPoints);
const category = (hazardous: number, acute = 0) => generatorCategory(limits, { hazardous, acute });

const weekdays: WorkCalendar = {
  id: 'yard',
  title: 'Yard days',
  weekdays: [1, 2, 3, 4, 5],
  shiftHours: 8,
  federalHolidays: false,
  holidays: [],
  closures: [],
  extraWorkDays: [],
};
const made = (kilograms: number, start: string, finish: string, counts = true): Generation => ({
  item: `work-${start}-${counts}`,
  stream: counts ? 'paint-hazardous' : 'used-oil',
  kilograms,
  counts,
  acute: false,
  start,
  finish,
  calendar: weekdays,
});

describe('the generator category (40 CFR 262.13)', () => {
  test('100 kg very small, 100.1 small, 999.9 small, 1,000 large, 500 kg with 1.2 kg acute large', () => {
    expect(category(100)).toBe('very small');
    expect(category(100.1)).toBe('small');
    expect(category(999.9)).toBe('small');
    expect(category(1000)).toBe('large');
    expect(category(500, 1.2)).toBe('large');
    expect(category(50, 1)).toBe('very small');
  });

  test('5,000 kg of used oil and 90 kg of failing paint is very small; 110 kg of paint is small', () => {
    const oil = made(5000, '2027-03-01', '2027-03-31', false);
    const of = (paint: number) =>
      generatorPlan(limits, [oil, made(paint, '2027-03-01', '2027-03-12')], false).months;
    expect(of(90)).toMatchObject([{ month: '2027-03', counted: 90, category: 'very small' }]);
    expect(of(110)).toMatchObject([{ category: 'small' }]);
  });

  test('used oil does not count and failing paint does, each with its reason', () => {
    const stream = (id: string) => library.rateBook.streams.find(candidate => candidate.id === id);
    expect(stream('used-oil')).toMatchObject({ counts: false });
    expect(stream('paint-hazardous')).toMatchObject({ counts: true });
    for (const { countsReason } of library.rateBook.streams) expect(countsReason.length).toBeGreaterThan(10);
  });

  test('work over a month’s end is shared by its work days', () => {
    // Monday 29 March to Friday 2 April 2027: three work days in March, two in April.
    const { months } = generatorPlan(limits, [made(500, '2027-03-29', '2027-04-02')], false);
    expect(months.map(({ month, counted }) => [month, counted])).toEqual([
      ['2027-03', 300],
      ['2027-04', 200],
    ]);
  });
});

describe('a planned episodic event (40 CFR 262 subpart L)', () => {
  test('1,200 kg inside it leaves the category as it was, with the notice 30 days before', () => {
    const work = [made(1200, '2027-06-07', '2027-06-11'), made(80, '2027-03-01', '2027-03-05')];
    const [march, june] = generatorPlan(limits, work, true).months;
    expect(generatorPlan(limits, work, false).months[1]?.category).toBe('large');
    expect([march?.category, june?.category]).toEqual(['very small', 'very small']);
    expect(generatorPlan(limits, work, true).event).toEqual({
      start: '2027-06-07',
      finish: '2027-08-05',
      noticeBy: '2027-05-08',
    });
  });

  test('what is made after its 60 days counts', () => {
    const work = [made(1200, '2027-06-07', '2027-06-11'), made(1100, '2027-08-20', '2027-08-20')];
    expect(generatorPlan(limits, work, true).months.map(month => month.category)).toEqual([
      'very small',
      'large',
    ]);
  });
});

describe('pick-ups', () => {
  const month = (
    name: string,
    is: 'very small' | 'small' | 'large',
    kilograms: number,
    firstDay: number,
  ) => ({
    month: name,
    category: is,
    kilograms,
    firstDay,
    streams: [`of-${name}`],
  });
  const counts = (months: Parameters<typeof pickUps>[1]) => pickUps(limits, months).map(one => one.count);
  const day = (n: number) => 20820 + n; // 1 January 2027 is day 20,819 from 1970-01-01

  test('a large generator is picked up within 90 days, a small one within 180', () => {
    const year = (is: 'small' | 'large', kilograms: number) =>
      counts([
        month('2027-01', is, kilograms, day(0)),
        month('2027-02', is, kilograms, day(31)),
        month('2027-03', is, kilograms, day(59)),
        month('2027-04', is, kilograms, day(90)),
        month('2027-05', is, kilograms, day(120)),
        month('2027-06', is, kilograms, day(151)),
      ]);
    expect(year('large', 1500)).toEqual([0, 0, 1, 0, 0, 1]);
    expect(year('small', 500)).toEqual([0, 0, 0, 0, 0, 1]);
  });

  test('a very small generator holds less than 1,000 kg, a small one at most 6,000', () => {
    expect(counts([month('2027-01', 'very small', 999, day(0))])).toEqual([1]);
    expect(
      counts([
        ...Array.from({ length: 10 }, (_, i) =>
          month(`2027-${String(i + 1).padStart(2, '0')}`, 'very small', 100, day(i * 30)),
        ),
        month('2027-11', 'very small', 50, day(300)),
      ]),
    ).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1]);
  });

  test('what a month leaves stands on in the next, in weight, age and streams', () => {
    // 40 CFR 262.16(b)(1): 6,000 kg at one time; 3,500 + 3,000 asks for one load, and 500 kg stay for the last.
    const carried = pickUps(limits, [
      month('2027-01', 'large', 1500, day(0)),
      month('2027-02', 'very small', 50, day(31)),
      month('2027-03', 'very small', 50, day(59)),
    ]);
    // 1 January to 1 April is 90 days: the large month's waste goes with the last pick-up, streams of all three.
    expect(carried).toEqual([
      { count: 0, streams: [] },
      { count: 0, streams: [] },
      { count: 1, streams: ['of-2027-01', 'of-2027-02', 'of-2027-03'] },
    ]);
    const heavy = pickUps(limits, [
      month('2027-01', 'small', 3500, day(0)),
      month('2027-02', 'small', 3000, day(31)),
    ]);
    expect(heavy).toEqual([
      { count: 0, streams: [] },
      { count: 2, streams: ['of-2027-01', 'of-2027-02'] },
    ]);
  });

  test('what a load leaves is of its own month: the days count anew from there', () => {
    const months = [
      month('2027-01', 'small', 5900, day(0)),
      month('2027-05', 'small', 300, day(120)),
      month('2027-09', 'small', 300, day(243)),
    ];
    // The load of May takes January's waste; the 200 kg left are of 1 May and may stand 180 days, to 28 October.
    expect(pickUps(limits, months)).toEqual([
      { count: 0, streams: [] },
      { count: 1, streams: ['of-2027-01', 'of-2027-05'] },
      { count: 1, streams: ['of-2027-05', 'of-2027-09'] },
    ]);
  });

  test('what an episodic event makes goes by itself and leaves the limits of the category alone', () => {
    const work = [made(1200, '2027-06-07', '2027-06-11'), made(80, '2027-06-14', '2027-06-18')];
    const { months } = generatorPlan(limits, [...work, made(60, '2027-09-06', '2027-09-10')], true);
    expect(months.map(({ month: name, pickUps: count }) => [name, count])).toEqual([
      ['2027-06', 1],
      ['2027-09', 1],
    ]);
  });
});

describe('work that generates waste', () => {
  test('on days of its calendar works on those, and without any on its first day', () => {
    // 2027-06-05 and 06 are a weekend.
    expect(workedDays(made(10, '2027-06-04', '2027-06-07')).length).toBe(2);
    const [first, ...more] = workedDays(made(10, '2027-06-05', '2027-06-06'));
    expect([isoOf(first ?? 0), more]).toEqual(['2027-06-05', []]);
  });

  test('cannot finish before it starts: that is a fault of ours', () => {
    expect(() => workedDays(made(10, '2027-06-07', '2027-06-04'))).toThrow('cannot finish on 2027-06-04');
  });

  test('that counts for no category needs no event', () => {
    expect(plannedEvent(limits, [made(500, '2027-06-07', '2027-06-11', false)])).toBeUndefined();
    expect(plannedEvent(limits, [made(500, '2027-06-07', '2027-06-11')])?.start).toBe('2027-06-07');
  });
});
