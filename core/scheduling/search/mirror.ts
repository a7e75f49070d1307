import { intAt } from '../../base';
import { axisCalendarOf, besideEachOther, nextStartTable, SharedTables } from './axis';
import { quickOf } from './dated-quick';
import { finishOf, type AxisCalendar, type DatedNet } from './dated-net';
import { arcListsOf, mirrored, type Lag } from './lags';

/** The network with time running backwards: moment `t` becomes `slots - t`, starts become finishes. */
export function mirroredNet(net: DatedNet, lags: readonly Lag[]): DatedNet {
  const { slots, count } = net;
  const tables = besideEachOther(net.calendars.map(calendar => mirroredCalendar(calendar, slots)));
  const { calendars } = tables;
  const mirror = {
    ...net,
    ...tables,
    predecessors: net.successors,
    successors: net.predecessors,
    ...arcListsOf(count, lags.map(mirrored)),
    nextStart: mirroredNextStarts(net, calendars),
    template: mirroredTemplate(net),
    release: net.due.map(due => slots - due),
    due: new Int32Array(count).fill(slots),
    after: net.release.map(release => release - net.base),
    fixed: net.fixed.map((start, i) => (start < 0 ? -1 : slots - finishIn(net, i, start))),
  };
  return { ...mirror, quick: quickOf(mirror) };
}

function mirroredCalendar(calendar: AxisCalendar, slots: number): AxisCalendar {
  const isWork = new Uint8Array(slots);
  for (let day = 0; day < slots; day++) {
    isWork[slots - 1 - day] = calendar.indexOfDay[day] === calendar.indexOfDay[day + 1] ? 0 : 1;
  }
  return axisCalendarOf(isWork);
}

function finishIn(net: DatedNet, activity: number, start: number): number {
  const calendar = net.calendars[intAt(net.calendarOf, activity)];
  return calendar ? finishOf(calendar, start, intAt(net.durations, activity)) : start;
}

function mirroredNextStarts(net: DatedNet, calendars: readonly AxisCalendar[]): (Int32Array | null)[] {
  const shared = new SharedTables();
  return net.nextStart.map((next, i) => {
    const key = `${intAt(net.durations, i)} ${intAt(net.calendarOf, i)}`;
    return next && shared.get(next, key, () => mirroredStarts(net, calendars, next, i));
  });
}

/** Mirrored starts are finishes: one is allowed when the start it comes from is. */
function mirroredStarts(
  net: DatedNet,
  calendars: readonly AxisCalendar[],
  next: Int32Array,
  activity: number,
): Int32Array {
  const { slots } = net;
  const calendar = calendars[intAt(net.calendarOf, activity)];
  const duration = intAt(net.durations, activity);
  return nextStartTable(slots, day => {
    if (!calendar) return false;
    if (duration > 0 && calendar.indexOfDay[day] === calendar.indexOfDay[day + 1]) return false;
    const start = slots - finishOf(calendar, day, duration);
    return start >= 0 && next[start] === start;
  });
}

function mirroredTemplate(net: DatedNet): Int32Array {
  const { words, slots } = net;
  const template = new Int32Array(slots * words);
  for (let word = 0; word < words; word++) {
    template.set(net.template.slice(word * slots, (word + 1) * slots).reverse(), word * slots);
  }
  return template;
}
