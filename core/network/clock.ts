import { addWorkDays, countWorkDays, nextWorkDay, previousWorkDay, type ExpandedCalendar } from '../calendar';
import type { NetworkActivity } from './model';

/** How time runs for one activity: adding and taking away its days, and counting them. */
export interface Clock {
  /** The first moment at or after one at which it can start. */
  startFrom(moment: number): number;
  /** The last moment at or before one at which it can finish. */
  finishBefore(moment: number): number;
  finishOf(start: number, days: number): number;
  startOf(finish: number, days: number): number;
  /** The first moment with some days between it and an earlier one (or, for a negative number, a later one). */
  later(moment: number, days: number): number;
  /** The last moment from which {@link later} does not go beyond a moment. */
  earlier(moment: number, days: number): number;
  between(from: number, to: number): number;
}

/** Time without idle days; fractions allowed. */
const PLAIN: Clock = {
  startFrom: moment => moment,
  finishBefore: moment => moment,
  finishOf: (start, days) => start + days,
  startOf: (finish, days) => finish - days,
  later: (moment, days) => moment + days,
  earlier: (moment, days) => moment - days,
  between: (from, to) => to - from,
};

/** The clock of an activity: its calendar, or plain time. Beyond the days laid out, time ends at infinity. */
export function clockOf(activity: NetworkActivity): Clock {
  return activity.calendar ? calendarClock(activity.calendar) : PLAIN;
}

function calendarClock(calendar: ExpandedCalendar): Clock {
  const isInside = (moment: number) => moment >= calendar.first && moment <= calendar.first + calendar.length;
  const end = calendar.first + calendar.length;
  const nth = (moment: number, days: number) =>
    isInside(moment) ? addWorkDays(calendar, moment, days) : undefined;
  const startFrom = (moment: number) =>
    isInside(moment) && moment < end ? (nextWorkDay(calendar, moment) ?? Infinity) : Infinity;
  const finishBefore = (moment: number) => {
    if (!isInside(moment) || moment === calendar.first) return -Infinity;
    return (previousWorkDay(calendar, moment - 1) ?? -Infinity) + 1;
  };
  return {
    startFrom,
    finishBefore,
    finishOf: (start, days) => (days === 0 ? start : (nth(start, days - 1) ?? Infinity) + 1),
    startOf: (finish, days) => (days === 0 ? finish : (nth(finish, -days) ?? -Infinity)),
    later: (moment, days) => (days === 0 ? moment : (nth(moment, days - 1) ?? Infinity) + 1),
    earlier: (moment, days) => (days === 0 ? moment : (nth(moment, -days) ?? -Infinity)),
    between: (from, to) => (isInside(from) && isInside(to) ? countWorkDays(calendar, from, to) : Infinity),
  };
}
