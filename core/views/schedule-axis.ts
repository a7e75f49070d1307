import {
  addMonths,
  civilOf,
  dayOf,
  isoOf,
  monthOf,
  monthStart,
  weekdayOf,
  type DayNumber,
} from '../calendar';
import { monthWords } from '../calendar';
import type { ScheduleView } from './window-rows';

/** A date in words: `3 Sep 2027`. */
export function dateWords(iso: string): string {
  const { day } = civilOf(dayOf(iso));
  return `${day} ${monthWords(iso.slice(0, 7))}`;
}

/** The span the chart shows: whole months around the work and its marks. */
export function chartSpan(start: DayNumber, finish: DayNumber): { from: DayNumber; to: DayNumber } {
  return { from: monthStart(start), to: addMonths(monthStart(finish + 12), 1) };
}

/** Months with their names and Mondays with their day of the month. */
export function timeAxis(from: DayNumber, to: DayNumber): Pick<ScheduleView, 'months' | 'weeks'> {
  const months: { at: number; to: number; text: string; isQuarter: boolean }[] = [];
  for (let day = from; day < to; day = addMonths(day, 1)) {
    const isNamed = months.length === 0 || monthOf(day).endsWith('-01');
    const text = monthWords(monthOf(day));
    months.push({
      at: day,
      to: Math.min(addMonths(day, 1), to),
      text: isNamed ? text : text.slice(0, 3),
      isQuarter: /-(01|04|07|10)$/.test(monthOf(day)),
    });
  }
  const weeks: { at: number; text: string }[] = [];
  for (let day = from; day < to; day++) {
    if (weekdayOf(day) === 1) weeks.push({ at: day, text: String(Number(isoOf(day).slice(8, 10))) });
  }
  return { months, weeks };
}
