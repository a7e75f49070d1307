import { isoOf, liesIn } from '../../calendar';
import { at } from '../../base';
import type { Compiled } from '../compile/compiled';
import { reservedDays } from '../compile/compile-activities';
import type { ScheduleActivity } from '../model';
import type { Holding } from '../result';

/**
 * Why an activity that might start at a moment only starts later: days it cannot work. A closure that
 * ends just before it comes first, then a window too short for it, then its calendar.
 * @returns undefined when it starts at once, or only because a milestone closes a day.
 */
export function idleHolding(
  compiled: Compiled,
  activity: number,
  from: number,
  start: number,
): Holding | undefined {
  if (start <= from) return undefined;
  const { isMilestone, isClosing, open, crew } = at(compiled.activities, activity);
  const given = at(compiled.problem.activities, activity);
  const offset = isClosing && isMilestone ? 1 : 0;
  const idle = Array.from({ length: start - from }, (_, i) => from + i - offset).filter(day => day >= 0);
  const shut = idle.find(day => open.flags[day] !== 1);
  const idleFrom = isoOf(compiled.first + (shut ?? from));
  const closed = closureOn(compiled, given, start - 1 - offset);
  if (closed !== undefined) return { kind: 'closure', closure: closed, idleFrom };
  if (given.consecutive) return { kind: 'window', daysNeeded: reservedDays(given, crew), idleFrom };
  if (shut === undefined) return undefined;
  const isOutside = given.windows && !given.windows.some(window => liesIn(compiled.first + shut, window));
  if (isOutside === true) return { kind: 'window', daysNeeded: crew.workDays, idleFrom };
  return { kind: 'calendar', calendar: given.calendar, idleFrom };
}

/** The closure an activity keeps that holds a day. */
function closureOn(compiled: Compiled, given: ScheduleActivity, day: number): string | undefined {
  return given.closures?.find(id => {
    const closure = compiled.problem.closures?.[id];
    return closure !== undefined && liesIn(compiled.first + day, closure);
  });
}
