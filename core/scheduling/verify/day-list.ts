import type { ScheduleProblem } from '../model';

/** The days of a schedule written out one by one, each with its own facts. It knows no arithmetic of dates. */
export interface Day {
  readonly date: string;
  readonly year: number;
  readonly month: number;
  readonly dayOfMonth: number;
  /** 1 Monday to 7 Sunday. */
  readonly weekday: number;
}

/** Counts up the days from one date through another, inclusive. */
export function listDays(from: string, through: string): Day[] {
  const days: Day[] = [];
  let [year, month, dayOfMonth] = from.split('-').map(Number);
  if (year === undefined || month === undefined || dayOfMonth === undefined) return [];
  let weekday = weekdayByZeller(year, month, dayOfMonth);
  for (let date = from; date <= through;) {
    days.push({ date, year, month, dayOfMonth, weekday });
    dayOfMonth++;
    weekday = weekday === 7 ? 1 : weekday + 1;
    if (dayOfMonth > lengthOfMonth(year, month)) [dayOfMonth, month] = [1, month + 1];
    if (month > 12) [month, year] = [1, year + 1];
    date = [
      String(year).padStart(4, '0'),
      String(month).padStart(2, '0'),
      String(dayOfMonth).padStart(2, '0'),
    ].join('-');
  }
  return days;
}

/** @source Chr. Zeller, Kalender-Formeln, Acta Mathematica 9 (1886) 131-136. */
function weekdayByZeller(year: number, month: number, day: number): number {
  const [m, y] = month < 3 ? [month + 12, year - 1] : [month, year];
  const [century, rest] = [Math.floor(y / 100), y % 100];
  const fromSaturday =
    (day +
      Math.floor((13 * (m + 1)) / 5) +
      rest +
      Math.floor(rest / 4) +
      Math.floor(century / 4) +
      5 * century) %
    7;
  return ((fromSaturday + 5) % 7) + 1;
}

function lengthOfMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Every day from the horizon start through some days after a last date. */
export function daysOfProblem(problem: ScheduleProblem, through: string): Day[] {
  const room = 40;
  const [year = 0, month = 1] = through.split('-').map(Number);
  const later = month + Math.ceil(room / 28);
  const end =
    later > 12
      ? `${year + 1}-${String(later - 12).padStart(2, '0')}`
      : `${year}-${String(later).padStart(2, '0')}`;
  return listDays(problem.horizonStart, `${end}-28`);
}
