import { BugError } from '../base';

/**
 * A calendar day as a whole number: days since 1970-01-01, in the proleptic Gregorian calendar, without a
 * time of day and without a time zone. Text outside this module is always `YYYY-MM-DD`.
 */
export type DayNumber = number;

const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * The day number of a year, month (1 to 12) and day of the month.
 * @source H. Hinnant, "chrono-Compatible Low-Level Date Algorithms" (2013), `days_from_civil`.
 */
export function dayOfCivil(year: number, month: number, day: number): DayNumber {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const monthFromMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * monthFromMarch + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** Year, month and day of the month of a day number. @source as {@link dayOfCivil}, `civil_from_days`. */
export function civilOf(day: DayNumber): {
  readonly year: number;
  readonly month: number;
  readonly day: number;
} {
  const shifted = day + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return { year, month, day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1 };
}

/** The number of days in a month (1 to 12) of a year. */
export function daysInMonth(year: number, month: number): number {
  const next = month === 12 ? dayOfCivil(year + 1, 1, 1) : dayOfCivil(year, month + 1, 1);
  return next - dayOfCivil(year, month, 1);
}

/**
 * Reads `YYYY-MM-DD`.
 * @returns the day number, or `undefined` when the text is not such a date (a 30 February is not).
 */
export function parseIsoDate(text: string): DayNumber | undefined {
  const parts = ISO_DATE.exec(text);
  if (!parts) return undefined;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return undefined;
  return dayOfCivil(year, month, day);
}

/** The day number of a date already known to be good. @throws BugError when it is not `YYYY-MM-DD`. */
export function dayOf(isoDate: string): DayNumber {
  const day = parseIsoDate(isoDate);
  if (day === undefined) throw new BugError(`not a date: ${isoDate}`);
  return day;
}

/** `YYYY-MM-DD` of a day number (years 0 to 9999). */
export function isoOf(day: DayNumber): string {
  const civil = civilOf(day);
  return `${pad(civil.year, 4)}-${pad(civil.month, 2)}-${pad(civil.day, 2)}`;
}

function pad(value: number, width: number): string {
  return String(value).padStart(width, '0');
}
