import type { WorkCalendar } from './work-calendar';

/**
 * Whole work days a crew needs for some hours of work: a begun work day counts.
 * The quotient is settled to a millionth of a work day first, so that 24 h of 3 workers in 8 h shifts is 1.
 * @param hours worker-hours, 0 or more.
 * @param crewSize workers, above 0.
 */
export function workDaysOfHours(
  hours: number,
  crewSize: number,
  calendar: Pick<WorkCalendar, 'shiftHours'>,
): number {
  const millionths = Math.round((hours / (crewSize * calendar.shiftHours)) * 1e6);
  return Math.ceil(millionths / 1e6);
}
