import type { Finding } from '../base';
import { parseIsoDate } from './iso-date';
import { isMonthDay, type DateSpan, type Season } from './season';
import type { Weekday } from './weekday';

/** A spell without work: once (dates) or every year (a season), with what it is called. */
export type Closure = { readonly id: string; readonly title: string } & (Season | DateSpan);

/** Which days are worked, and how long a shift is. */
export interface WorkCalendar {
  readonly id: string;
  readonly title: string;
  /** Days of the week worked, 1 Monday to 7 Sunday. */
  readonly weekdays: readonly Weekday[];
  /** Hours of one work day of one worker. */
  readonly shiftHours: number;
  /** Whether the federal holidays (observed days) are not worked. */
  readonly federalHolidays: boolean;
  /** Other days not worked, `YYYY-MM-DD`. */
  readonly holidays: readonly string[];
  /** Spells without work for everyone on this calendar (port closure, year-end stop). */
  readonly closures: readonly Closure[];
  /** Days worked although the rules above say no, `YYYY-MM-DD`; they win over everything else. */
  readonly extraWorkDays: readonly string[];
}

/** What makes a day a work day or not, in the order in which the rules win. */
export type DayKind = 'worked' | 'weekday' | 'holiday' | 'closure';

/** Every fault of a calendar: `calendar/no-work-day`, `calendar/shift-hours`, `calendar/date`. */
export function checkCalendar(calendar: WorkCalendar, place: string): Finding[] {
  const findings: Finding[] = [];
  if (calendar.weekdays.length === 0 && calendar.extraWorkDays.length === 0)
    findings.push(noWorkDay(calendar, place));
  if (!(calendar.shiftHours > 0 && calendar.shiftHours <= 24)) findings.push(shiftHours(calendar, place));
  for (const date of [...calendar.holidays, ...calendar.extraWorkDays]) {
    if (parseIsoDate(date) === undefined) findings.push(badDate(date, place));
  }
  for (const closure of calendar.closures) findings.push(...checkClosure(closure, place));
  return findings;
}

/** Faults of one closure: both ends must be dates, or both days of the year. */
export function checkClosure(closure: Closure, place: string): Finding[] {
  const ends = [closure.from, closure.to];
  if (ends.every(isMonthDay)) return [];
  const [from, to] = [parseIsoDate(closure.from), parseIsoDate(closure.to)];
  if (from === undefined || to === undefined)
    return ends.filter(end => parseIsoDate(end) === undefined).map(end => badDate(end, place));
  if (from <= to) return [];
  return [
    {
      code: 'calendar/closure-order',
      weight: 'blocks',
      place,
      message: `${closure.title} ends on ${closure.to}, before it begins on ${closure.from}.`,
      meaning: 'The closure shuts no day, so nothing on this calendar is scheduled.',
      remedy:
        'Exchange the two dates, or give both as a day of the year (MM-DD) for a spell across the year end.',
    },
  ];
}

function noWorkDay(calendar: WorkCalendar, place: string): Finding {
  return {
    code: 'calendar/no-work-day',
    weight: 'blocks',
    place,
    message: `Calendar ${calendar.title} has no work day.`,
    meaning: 'Nothing on this calendar can be scheduled.',
    remedy: 'Choose at least one day of the week.',
  };
}

function shiftHours(calendar: WorkCalendar, place: string): Finding {
  return {
    code: 'calendar/shift-hours',
    weight: 'blocks',
    place,
    message: `Calendar ${calendar.title} has a shift of ${calendar.shiftHours} h.`,
    meaning: 'Hours cannot be turned into work days on this calendar.',
    remedy: 'Give the hours of one work day, above 0 and at most 24.',
  };
}

function badDate(text: string, place: string): Finding {
  return {
    code: 'calendar/date',
    weight: 'blocks',
    place,
    message: `"${text}" is not a date.`,
    meaning: 'It shuts or opens no day, so nothing on this calendar is scheduled.',
    remedy: 'Write dates as YYYY-MM-DD; a day that comes back every year as MM-DD.',
  };
}
