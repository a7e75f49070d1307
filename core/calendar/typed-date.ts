import { daysInMonth } from './iso-date';

/** A typed date as `YYYY-MM-DD`, or a sentence that says how to write it. */
export type TypedDate = { readonly date: string } | { readonly fault: string };

const YEAR_FIRST = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/;

/**
 * Reads a date as people type it: the year first, or `12/01/2026` with the month first where that order is usual.
 * @param isMonthFirst whether the reader writes the month before the day, as in the United States.
 * @returns the date, or what to write instead: both readings where the order is not known.
 * @source Year first: ISO 8601. Month first: common practice in the United States.
 * @example readTypedDate('12/01/2026', true) // { date: '2026-12-01' }
 */
export function readTypedDate(text: string, isMonthFirst: boolean): TypedDate {
  const typed = text.trim();
  const iso = dateOf(YEAR_FIRST.exec(typed)?.slice(1) ?? []);
  if (iso !== undefined) return { date: iso };
  const [first = '', second = '', year = ''] = YEAR_LAST.exec(typed)?.slice(1) ?? [];
  const readings = [dateOf([year, first, second]), dateOf([year, second, first])];
  const [monthFirst] = readings;
  if (isMonthFirst && monthFirst !== undefined) return { date: monthFirst };
  const known = [...new Set(readings.filter(one => one !== undefined))];
  if (known.length > 0)
    return {
      fault: `"${typed}" can be meant in more than one order. Write the year first: ${known.join(' or ')}.`,
    };
  const either = isMonthFirst ? ' or with the month first, such as 4/5/2027' : '';
  return {
    fault: `"${typed.slice(0, 40)}" is no date of the calendar. Write it as YYYY-MM-DD, such as 2027-04-05${either}.`,
  };
}

function dateOf([year = '', month = '', day = '']: readonly string[]): string | undefined {
  const [inYear, inMonth, onDay] = [Number(year), Number(month), Number(day)];
  if (inYear < 1 || inMonth < 1 || inMonth > 12 || onDay < 1 || onDay > daysInMonth(inYear, inMonth))
    return undefined;
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}
