import { BugError } from '../base';
import { dayOf, expandCalendar, isWorkDay, monthOf, type WorkCalendar } from '../calendar';

/** What an activity generates of one stream, and when it works. */
export interface Generation {
  readonly item: string;
  readonly stream: string;
  readonly kilograms: number;
  /** Whether the stream counts towards the category, and whether it is acute. */
  readonly counts: boolean;
  readonly acute: boolean;
  readonly start: string;
  readonly finish: string;
  readonly calendar: WorkCalendar;
}

/** The days on which an activity works: those of its calendar from start to finish. */
export function workedDays({ start, finish, calendar }: Generation): number[] {
  const [first, last] = [dayOf(start), dayOf(finish)];
  if (last < first) throw new BugError(`an activity cannot finish on ${finish} when it starts on ${start}`);
  const expanded = expandCalendar(calendar, first, last - first + 1);
  const days = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const worked = days.filter(day => isWorkDay(expanded, day));
  return worked.length > 0 ? worked : [first];
}

/** The share of what an activity generates in each month it works in: work days of the month over all its work days. */
export function monthlyShares(days: readonly number[]): Map<string, number> {
  const shares = new Map<string, number>();
  for (const day of days) {
    const month = monthOf(day);
    shares.set(month, (shares.get(month) ?? 0) + 1 / days.length);
  }
  return shares;
}
