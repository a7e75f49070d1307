import type { ScheduleActivity, ScheduleProblem, ScheduleRelationship } from '../../../core/scheduling';
import type { WorkCalendar } from '../../../core/calendar';

const plain = { shiftHours: 8, federalHolidays: false, holidays: [], closures: [], extraWorkDays: [] };

/** Five-day week, six-day week, every day, and a five-day week with federal holidays. */
export const calendars: Record<string, WorkCalendar> = {
  five: { ...plain, id: 'five', title: 'Five days', weekdays: [1, 2, 3, 4, 5] },
  six: { ...plain, id: 'six', title: 'Six days', weekdays: [1, 2, 3, 4, 5, 6] },
  all: { ...plain, id: 'all', title: 'Every day', weekdays: [1, 2, 3, 4, 5, 6, 7] },
  yard: { ...plain, id: 'yard', title: 'Yard', weekdays: [1, 2, 3, 4, 5], federalHolidays: true },
};

/** An activity of some work days on the five-day calendar. */
export function work(id: string, workDays: number, more: Partial<ScheduleActivity> = {}): ScheduleActivity {
  return { id, title: id, stage: 'clean-up', calendar: 'five', workDays, ...more };
}

/** A relationship, finish to start without lag unless said otherwise. */
export function after(
  from: string,
  to: string,
  more: Partial<ScheduleRelationship> = {},
): ScheduleRelationship {
  return { from, to, kind: 'FS', ...more };
}

/** A problem that starts on Monday 1 March 2027. */
export function problemOf(
  activities: readonly ScheduleActivity[],
  relationships: readonly ScheduleRelationship[] = [],
  more: Partial<ScheduleProblem> = {},
): ScheduleProblem {
  return { horizonStart: '2027-03-01', calendars, resources: [], activities, relationships, ...more };
}
