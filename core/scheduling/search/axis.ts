import { at, intAt } from '../../base';
import type { AxisCalendar, DatedNet } from './dated-net';

/** Index tables of work days along an axis. */
export function axisCalendarOf(isWork: Uint8Array): AxisCalendar {
  const indexOfDay = new Int32Array(isWork.length + 1);
  const dayOfIndex = new Int32Array(isWork.length + 1);
  let filled = 0;
  for (let day = 0; day < isWork.length; day++) {
    indexOfDay[day] = filled;
    if (isWork[day] === 1) dayOfIndex[filled++] = day;
  }
  indexOfDay[isWork.length] = filled;
  dayOfIndex.fill(isWork.length, filled);
  return { indexOfDay, dayOfIndex };
}

/** The calendars with their tables laid one behind the other. */
export function besideEachOther(
  calendars: readonly AxisCalendar[],
): Pick<DatedNet, 'calendars' | 'indexOfDay' | 'dayOfIndex'> {
  const length = at(calendars, 0).indexOfDay.length;
  const indexOfDay = new Int32Array(length * calendars.length);
  const dayOfIndex = new Int32Array(length * calendars.length);
  const views = calendars.map((calendar, c) => {
    indexOfDay.set(calendar.indexOfDay, c * length);
    dayOfIndex.set(calendar.dayOfIndex, c * length);
    return {
      indexOfDay: indexOfDay.subarray(c * length, (c + 1) * length),
      dayOfIndex: dayOfIndex.subarray(c * length, (c + 1) * length),
    };
  });
  return { calendars: views, indexOfDay, dayOfIndex };
}

/** For each moment the first one at or after it that is allowed; the end of the axis when there is none. */
export function nextStartTable(slots: number, isAllowed: (day: number) => boolean): Int32Array {
  const next = new Int32Array(slots + 1).fill(slots);
  for (let day = slots - 1; day >= 0; day--) next[day] = isAllowed(day) ? day : intAt(next, day + 1);
  return next;
}

/**
 * Makes tables once for equal makings: activities that share their allowed starts (milestones of one calendar,
 * runs of one length) share one table too.
 */
export class SharedTables {
  private readonly known = new Map<object, Map<string, Int32Array>>();

  /** @param source the array the table is made from, by identity. @param key what else it depends on. */
  get(source: object, key: string, make: () => Int32Array): Int32Array {
    const tables = this.known.get(source) ?? new Map<string, Int32Array>();
    this.known.set(source, tables);
    const table = tables.get(key) ?? make();
    tables.set(key, table);
    return table;
  }
}
