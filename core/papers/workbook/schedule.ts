import type { EstimateParts } from '../../evaluation';
import type { ScheduledActivity } from '../../scheduling';
import { date, headingRow, number, text } from './cells';
import { largeSheet, partsOfRows } from './large-sheet';
import type { PaperCell, PaperSheet } from './model';

/** The schedule as dates: values of the program, since a workbook cannot level crews. */
export function scheduleSheet({ schedule }: EstimateParts): PaperSheet {
  const titles = ['Activity', 'Key', 'Start', 'Finish', 'Days', 'Total float', 'Holds the finish', 'People'];
  const above = [
    text(1, 1, 'Schedule', 'title'),
    text(2, 1, 'Dates and durations come from the program; the workbook cannot level crews.', 'note'),
    ...headingRow(3, titles),
  ];
  const parts = partsOfRows(above, schedule.activities, (activity, i) => activityRow(activity, i + 4));
  const widths = [46, 28, 12, 12, 8, 12, 16, 8];
  return largeSheet({ name: 'Schedule', headingRows: 3, landscape: true }, parts, () => widths);
}

function activityRow(activity: ScheduledActivity, row: number): PaperCell[] {
  return [
    text(row, 1, activity.title),
    text(row, 2, activity.id),
    date(row, 3, activity.start),
    date(row, 4, activity.finish),
    number(row, 5, activity.workDays, 0, 'schedule'),
    number(row, 6, activity.totalFloat, 0, 'schedule'),
    text(row, 7, activity.critical ? 'yes' : ''),
    number(row, 8, activity.crewSize, 0, 'schedule'),
  ];
}
