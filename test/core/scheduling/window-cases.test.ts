import { describe, expect, it } from 'vitest';
import { dates, held } from './dates';
import { after, problemOf, work } from './problems';

const hurricanes = {
  hurricanes: { id: 'hurricanes', title: 'Hurricane season', from: '06-01', to: '11-30' },
};
const tow = (days: number, weatherDays: number, more = {}) =>
  work('tow', days, { calendar: 'all', consecutive: { weatherDays }, ...more });

describe('closures and windows by hand', () => {
  it('work pauses over a closure and goes on after it', () => {
    const problem = problemOf([work('A', 5, { closures: ['birds'] })], [], {
      closures: { birds: { id: 'birds', title: 'Nesting', from: '2027-03-03', to: '2027-03-04' } },
    });
    expect(dates(problem)).toEqual(['A 03-01/03-09']);
  });
  it('a tow of six days and four of weather that ends on the last open day goes before the season', () => {
    const problem = problemOf([tow(6, 4, { closures: ['hurricanes'], notBefore: '2027-05-22' })], [], {
      closures: hurricanes,
    });
    expect(dates(problem)).toEqual(['tow 05-22/05-31']);
  });
  it('one day later it misses the season and waits for 1 December, and the closure is what holds it', () => {
    const problem = problemOf([tow(6, 4, { closures: ['hurricanes'], notBefore: '2027-05-23' })], [], {
      closures: hurricanes,
    });
    expect(dates(problem)).toEqual(['tow 12-01/12-10']);
    expect(held(problem, 'tow')[0]).toBe('Hurricane season, closed from 2027-06-01');
  });
  it('what has no weather allowance still fits', () => {
    const problem = problemOf([tow(6, 0, { closures: ['hurricanes'], notBefore: '2027-05-23' })], [], {
      closures: hurricanes,
    });
    expect(dates(problem)).toEqual(['tow 05-23/05-28']);
  });
  it('a window by date that is too short is passed over for the next', () => {
    const windows = [
      { from: '2027-03-02', to: '2027-03-04' },
      { from: '2027-03-20', to: '2027-03-29' },
    ];
    const problem = problemOf([tow(4, 1, { windows })]);
    expect(dates(problem)).toEqual(['tow 03-20/03-24']);
    expect(held(problem, 'tow')[0]).toBe(
      'needs an open window of 5 calendar days on end; there is none from 2027-03-01',
    );
  });
  it('a season that is open every year is met in the next year when this year is missed', () => {
    const problem = problemOf([
      tow(20, 0, { windows: [{ from: '04-01', to: '04-30' }], notBefore: '2027-04-15' }),
    ]);
    expect(dates(problem)).toEqual(['tow 04-01/04-20']);
  });
  it('a closure across the year end holds from November to February', () => {
    const closures = { winter: { id: 'winter', title: 'Winter storms', from: '11-15', to: '02-15' } };
    const problem = problemOf([tow(3, 0, { closures: ['winter'], notBefore: '2027-11-13' })], [], {
      closures,
    });
    expect(dates(problem)).toEqual(['tow 02-16/02-18']);
  });
  it('consecutive days on a five-day calendar stay within one week', () => {
    const problem = problemOf([
      work('sink', 2, { consecutive: { weatherDays: 0 }, notBefore: '2027-03-05' }),
    ]);
    expect(dates(problem)).toEqual(['sink 03-08/03-09']);
  });
  it('sinking within three calendar days after the tow keeps the tow back for the sinking window', () => {
    const problem = problemOf(
      [tow(2, 0), work('sink', 1, { calendar: 'all', windows: [{ from: '2027-04-10', to: '2027-04-20' }] })],
      [after('tow', 'sink', { maximumLag: 3, lagUnit: 'day' })],
    );
    expect(dates(problem)).toEqual(['tow 04-05/04-06', 'sink 04-10/04-10']);
  });
  it('a permit clock of calendar days before the window decides the season', () => {
    const problem = problemOf(
      [work('permit', 120, { durationUnit: 'day', waiting: true }), tow(6, 4, { closures: ['hurricanes'] })],
      [after('permit', 'tow')],
      { closures: hurricanes },
    );
    expect(dates(problem)).toEqual(['permit 03-01/06-28', 'tow 12-01/12-10']);
  });
});
