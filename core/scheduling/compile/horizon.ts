import { dayOf, parseIsoDate } from '../../calendar';
import type { ScheduleActivity, ScheduleProblem } from '../model';

/** Two years and some: a season missed once must come round again inside the horizon. */
const ROOM_FOR_A_MISSED_SEASON = 800;
/** Calendar days a work day can take: a two-day week with holidays, beyond which a calendar is a closure. */
const CALENDAR_DAYS_PER_WORK_DAY = 3.6;
const ROOM_FOR_HOLIDAYS = 30;

/**
 * How many days to lay out from the horizon start: to the last date mentioned, and from there all work in a row.
 * @returns whole days.
 */
export function horizonDays(problem: ScheduleProblem): number {
  const first = dayOf(problem.horizonStart);
  let last = first;
  const mention = (date: string | undefined) => {
    const day = date === undefined ? undefined : parseIsoDate(date);
    if (day !== undefined && day > last) last = day;
  };
  mention(problem.statusDate);
  for (const r of problem.resources) for (const change of r.capacityChanges ?? []) mention(change.to);
  let work = 0;
  for (const activity of problem.activities) {
    for (const date of datesOf(activity)) mention(date);
    work += longestDays(activity, daysPerWorkDay(problem, activity));
  }
  for (const relationship of problem.relationships) work += Math.max(0, relationship.lag ?? 0) * 2;
  return (
    last - first + Math.ceil(work) + ROOM_FOR_HOLIDAYS + (hasSeasons(problem) ? ROOM_FOR_A_MISSED_SEASON : 0)
  );
}

function datesOf(activity: ScheduleActivity): (string | undefined)[] {
  const windows = (activity.windows ?? []).map(window => window.to);
  return [activity.notBefore, activity.deadline, activity.actualStart, activity.actualFinish, ...windows];
}

function longestDays(activity: ScheduleActivity, stretch: number): number {
  const days = activity.modes?.map(mode => mode.workDays) ?? [activity.workDays ?? 0];
  const longest = Math.max(...days, activity.remaining ?? 0) + (activity.consecutive?.weatherDays ?? 0);
  return longest * stretch + 1;
}

function daysPerWorkDay(problem: ScheduleProblem, activity: ScheduleActivity): number {
  if (activity.durationUnit === 'day') return 1;
  const weekdays = problem.calendars[activity.calendar]?.weekdays.length ?? 0;
  return weekdays === 0 ? CALENDAR_DAYS_PER_WORK_DAY : Math.min(CALENDAR_DAYS_PER_WORK_DAY, 7.4 / weekdays);
}

function hasSeasons(problem: ScheduleProblem): boolean {
  const closing = Object.values(problem.calendars).some(calendar => calendar.closures.length > 0);
  return (
    closing ||
    problem.activities.some(
      a => (a.closures?.length ?? 0) + (a.windows?.length ?? 0) > 0 || a.consecutive !== undefined,
    )
  );
}
