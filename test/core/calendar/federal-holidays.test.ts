import { describe, expect, it } from 'vitest';
import Holidays from 'date-holidays';
import { federalHolidays } from '../../../core/calendar';

const TITLES: Record<string, RegExp> = {
  'new-year': /New Year/,
  king: /Martin Luther King/,
  washington: /Washington/,
  memorial: /Memorial/,
  juneteenth: /Juneteenth/,
  independence: /Independence Day/,
  labor: /Labou?r Day/,
  columbus: /Columbus/,
  veterans: /Veterans/,
  thanksgiving: /^Thanksgiving/,
  christmas: /^Christmas Day/,
};

function isHolidayOrSubstitute(holiday: { type: string; substitute?: boolean }): boolean {
  return holiday.type === 'public' || (holiday.type === 'bank' && holiday.substitute === true);
}

describe('federal holidays', () => {
  it('are those of the date-holidays package, own and substitute days, 2000 to 2100', () => {
    const package_ = new Holidays('US');
    const differences: string[] = [];
    for (let year = 2000; year <= 2100; year++) {
      const theirs = [year - 1, year, year + 1]
        .flatMap(y => package_.getHolidays(y))
        .filter(isHolidayOrSubstitute);
      for (const holiday of federalHolidays(year)) {
        if (holiday.id === 'juneteenth' && year < 2021) differences.push(`${year} too early`);
        const named = theirs.filter(h => TITLES[holiday.id]?.test(h.name)).map(h => h.date.slice(0, 10));
        if (!named.includes(holiday.date))
          differences.push(`${holiday.title} ${holiday.date}: ${named.join(' ')}`);
        // The package gives banks no Friday for a Saturday Veterans Day; the federal rule does (next test).
        if (holiday.id === 'veterans' && holiday.observed < holiday.date) continue;
        if (!named.includes(holiday.observed))
          differences.push(`${holiday.title} observed ${holiday.observed}: ${named.join(' ')}`);
      }
    }
    expect(differences).toEqual([]);
  });

  it('there are 11 a year since 2021 and 10 before (5 U.S.C. 6103; Public Law 117-17)', () => {
    expect([2020, 2021, 2027].map(year => federalHolidays(year).length)).toEqual([10, 11, 11]);
  });

  // U.S. Office of Personnel Management, federal holidays, calendar years 2017 and 2023.
  it('Veterans Day on a Saturday is observed on Friday 10 November', () => {
    const observed = [2017, 2023].map(year => federalHolidays(year).find(h => h.id === 'veterans')?.observed);
    expect(observed).toEqual(['2017-11-10', '2023-11-10']);
  });

  // U.S. Office of Personnel Management, federal holidays, calendar year 2027.
  it('move off a weekend: Saturday to Friday, Sunday to Monday', () => {
    const observed = Object.fromEntries(federalHolidays(2027).map(h => [h.id, h.observed]));
    expect([observed['juneteenth'], observed['independence'], observed['christmas']]).toEqual([
      '2027-06-18',
      '2027-07-05',
      '2027-12-24',
    ]);
    expect(federalHolidays(2028)[0]?.observed).toBe('2027-12-31');
  });
});
