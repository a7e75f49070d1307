import { describe, expect, it } from 'vitest';
import { dates, held } from './dates';
import { after, calendars, problemOf, work } from './problems';

// Worked by hand. 1 March 2027 is a Monday; 6 and 7 March are the first weekend.
describe('calendars and relationships by hand', () => {
  it('five work days fill Monday to Friday; the sixth is the next Monday', () => {
    expect(dates(problemOf([work('A', 5), work('B', 6)]))).toEqual(['A 03-01/03-05', 'B 03-01/03-08']);
  });
  it('after A finishes on Friday, B starts on Monday, on a six-day week on Saturday', () => {
    const problem = problemOf(
      [work('A', 5), work('B', 1), work('C', 1, { calendar: 'six' })],
      [after('A', 'B'), after('A', 'C')],
    );
    expect(dates(problem)).toEqual(['A 03-01/03-05', 'B 03-08/03-08', 'C 03-06/03-06']);
  });
  it('two work days between a Friday and the next start leave Monday and Tuesday out', () => {
    expect(dates(problemOf([work('A', 5), work('B', 1)], [after('A', 'B', { lag: 2 })]))[1]).toBe(
      'B 03-10/03-10',
    );
  });
  it('two calendar days after a Friday are the weekend itself', () => {
    expect(
      dates(problemOf([work('A', 5), work('B', 1)], [after('A', 'B', { lag: 2, lagUnit: 'day' })]))[1],
    ).toBe('B 03-08/03-08');
  });
  it('a lag in work days counts on the calendar of the one that waits', () => {
    const problem = problemOf(
      [work('A', 5), work('B', 1, { calendar: 'all' })],
      [after('A', 'B', { lag: 2 })],
    );
    expect(dates(problem)[1]).toBe('B 03-08/03-08');
  });
  it('a negative lag lets B start two work days before A finishes', () => {
    expect(dates(problemOf([work('A', 5), work('B', 3)], [after('A', 'B', { lag: -2 })]))[1]).toBe(
      'B 03-04/03-08',
    );
  });
  it('B starts three work days after A starts', () => {
    expect(dates(problemOf([work('A', 5), work('B', 3)], [after('A', 'B', { kind: 'SS', lag: 3 })]))[1]).toBe(
      'B 03-04/03-08',
    );
  });
  it('B finishes one work day after A finishes at the earliest', () => {
    expect(dates(problemOf([work('A', 5), work('B', 2)], [after('A', 'B', { kind: 'FF', lag: 1 })]))[1]).toBe(
      'B 03-05/03-08',
    );
  });
  it('B finishes four work days after A starts at the earliest', () => {
    const problem = problemOf(
      [work('A', 5, { notBefore: '2027-03-03' }), work('B', 1)],
      [after('A', 'B', { kind: 'SF', lag: 4 })],
    );
    // Four work days from Wednesday are Wednesday, Thursday, Friday, Monday.
    expect(dates(problem)).toEqual(['A 03-03/03-09', 'B 03-08/03-08']);
  });
  it('calendar days run through the weekend: curing of three days from Friday evening ends on Monday', () => {
    const problem = problemOf(
      [work('A', 5), work('cure', 3, { durationUnit: 'day', waiting: true }), work('B', 1)],
      [after('A', 'cure'), after('cure', 'B')],
    );
    expect(dates(problem)).toEqual(['A 03-01/03-05', 'cure 03-06/03-08', 'B 03-09/03-09']);
  });
  it('an observed federal holiday is not worked: Memorial Day 31 May 2027', () => {
    const problem = problemOf([work('A', 2, { calendar: 'yard' }), work('B', 2)], [], {
      horizonStart: '2027-05-28',
    });
    expect(dates(problem)).toEqual(['A 05-28/06-01', 'B 05-28/05-31']);
  });
  it('Christmas 2027 is a Saturday and observed on Friday', () => {
    expect(
      dates(problemOf([work('A', 2, { calendar: 'yard' })], [], { horizonStart: '2027-12-23' })),
    ).toEqual(['A 12-23/12-27']);
  });
  it('an extra work day on a Saturday is used', () => {
    const five = calendars['five'];
    const extra = {
      ...calendars,
      five: {
        ...five,
        id: 'five',
        title: 'Five',
        weekdays: [1, 2, 3, 4, 5] as const,
        shiftHours: 8,
        federalHolidays: false,
        holidays: ['2027-03-02'],
        closures: [],
        extraWorkDays: ['2027-03-06'],
      },
    };
    expect(dates(problemOf([work('A', 5)], [], { calendars: extra }))).toEqual(['A 03-01/03-06']);
  });
  it('work that uses a crane works only when the crane does', () => {
    const problem = problemOf(
      [work('lift', 3, { calendar: 'six', uses: { crane: 1 }, notBefore: '2027-03-05' })],
      [],
      {
        resources: [{ id: 'crane', title: 'Crane', capacity: 1, calendar: 'five' }],
      },
    );
    expect(dates(problem)).toEqual(['lift 03-05/03-09']);
    expect(held(problem, 'lift')).toEqual(['may not start before 2027-03-05']);
  });
  it('a start in the weekend waits for Monday, and says so', () => {
    const problem = problemOf([work('A', 1, { notBefore: '2027-03-06' })]);
    expect(dates(problem)).toEqual(['A 03-08/03-08']);
    expect(held(problem, 'A')).toEqual([
      'may not start before 2027-03-06',
      'no work from 2027-03-06 on its calendar Five days',
    ]);
  });
  it('a milestone after work is dated the last day of that work, and what follows starts the next day', () => {
    const problem = problemOf(
      [work('A', 5), work('accepted', 0), work('B', 1)],
      [after('A', 'accepted'), after('accepted', 'B')],
    );
    expect(dates(problem)).toEqual(['A 03-01/03-05', 'accepted 03-05/03-05', 'B 03-08/03-08']);
  });
  it('a milestone that opens the work is dated the day the work starts', () => {
    const problem = problemOf(
      [work('notice', 0, { notBefore: '2027-03-06' }), work('A', 1)],
      [after('notice', 'A')],
    );
    expect(dates(problem)).toEqual(['notice 03-08/03-08', 'A 03-08/03-08']);
  });
  it('a milestone after curing that ends on a Sunday is reached on Monday', () => {
    const problem = problemOf(
      [work('cure', 7, { durationUnit: 'day' }), work('accepted', 0)],
      [after('cure', 'accepted')],
    );
    expect(dates(problem)).toEqual(['cure 03-01/03-07', 'accepted 03-08/03-08']);
  });
  it('at most one work day between: the first is held back for the second', () => {
    const problem = problemOf(
      [work('A', 1), work('B', 1, { notBefore: '2027-03-10' })],
      [after('A', 'B', { maximumLag: 1 })],
    );
    expect(dates(problem)).toEqual(['A 03-08/03-08', 'B 03-10/03-10']);
    expect(held(problem, 'A')).toEqual(['must not run too far ahead of B']);
  });
  it('a hammock spans from the first start to the last finish, in work days and calendar days', () => {
    const problem = problemOf([work('A', 5), work('B', 2)], [after('A', 'B')], {
      hammocks: [{ id: 'berth', title: 'Berth', fromStartOf: ['A'], toFinishOf: ['B'], calendar: 'six' }],
    });
    expect(dates(problem)).toEqual(['A 03-01/03-05', 'B 03-08/03-09']);
  });
});
