import { dayOf, isoOf, monthOf, weekdayOf } from '../../calendar';
import type { EstimateParts } from '../../evaluation';
import type { ScheduledActivity } from '../../scheduling';
import { date, text } from './cells';
import { largeSheet, partsOfRows } from './large-sheet';
import type { PaperCell, PaperSheet } from './model';

const FIRST_WEEK_COLUMN = 4;
const WEEK = 7;
/** The width of a week and of all of them, in characters: the whole chart goes on one page beside each other. */
const WEEK_WIDTH = 1.6;
const CHART_WIDTH = 110;

/** The schedule drawn in cells: a row an activity, a column a week; what holds the finish is dark. */
export function timeChartSheet({ schedule }: EstimateParts): PaperSheet | undefined {
  const { start, finish } = schedule;
  if (start === undefined || finish === undefined) return undefined;
  const monday = dayOf(start) - (weekdayOf(dayOf(start)) - 1);
  const weeks = Math.floor((dayOf(finish) - monday) / WEEK) + 1;
  const sorted = [...schedule.activities].sort((a, b) =>
    a.start < b.start ? -1 : a.start > b.start ? 1 : 0,
  );
  const parts = partsOfRows(above(monday, weeks), sorted, (activity, i) => row(activity, i + 4, monday));
  const week = Math.min(WEEK_WIDTH, CHART_WIDTH / weeks);
  const widths = [44, 11, 11, ...Array.from({ length: weeks }, () => week)];
  return largeSheet({ name: 'Time chart', headingRows: 3, landscape: true }, parts, () => widths);
}

/** What stands above the bars. */
function above(monday: number, weeks: number): PaperCell[] {
  return [
    text(1, 1, 'Schedule over weeks', 'title'),
    text(2, 1, 'Dark: holds the finish. Light: has float. Each column is the week from its Monday.', 'note'),
    ...['Activity', 'Start', 'Finish'].map((title, i) => text(3, i + 1, title, 'heading')),
    ...monthHeads(monday, weeks),
  ];
}

/** The month at the first week of each quarter year. */
function monthHeads(monday: number, weeks: number): PaperCell[] {
  let last = '';
  return Array.from({ length: weeks }, (_, i) => ({ i, month: monthOf(monday + i * WEEK) })).flatMap(
    ({ i, month }) => {
      const isNew = month !== last && /-(01|04|07|10)$/.test(month);
      last = month;
      return isNew ? [text(3, FIRST_WEEK_COLUMN + i, isoOf(monday + i * WEEK).slice(0, 7), 'unit')] : [];
    },
  );
}

function row(activity: ScheduledActivity, at: number, monday: number): PaperCell[] {
  const from = Math.floor((dayOf(activity.start) - monday) / WEEK);
  const to = Math.floor((dayOf(activity.finish) - monday) / WEEK);
  const style = activity.critical ? 'bar-critical' : 'bar';
  return [
    text(at, 1, activity.title),
    date(at, 2, activity.start),
    date(at, 3, activity.finish),
    ...Array.from({ length: to - from + 1 }, (_, i) => text(at, FIRST_WEEK_COLUMN + from + i, '', style)),
  ];
}
