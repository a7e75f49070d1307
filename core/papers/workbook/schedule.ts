import type { EstimateParts } from '../../evaluation';
import type { ScheduledActivity } from '../../scheduling';
import { date, headingRow, number, text } from './cells';
import type { LastMade } from './last-made';
import type { PaperCell, PaperSheet } from './model';

/** The schedule as dates: values of the program, since a workbook cannot level crews. */
export function scheduleSheet({ schedule }: EstimateParts, lastMade: LastMade): PaperSheet {
  const made = () => cellsOf(schedule.activities);
  return {
    name: 'Schedule',
    get cells() {
      return lastMade.of(made);
    },
    widths: [46, 28, 12, 12, 8, 12, 16, 8],
    headingRows: 3,
    landscape: true,
  };
}

function cellsOf(activities: readonly ScheduledActivity[]): PaperCell[] {
  const titles = ['Activity', 'Key', 'Start', 'Finish', 'Days', 'Total float', 'Holds the finish', 'People'];
  const rows = activities.flatMap((activity, i): PaperCell[] => {
    const row = i + 4;
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
  });
  return [
    text(1, 1, 'Schedule', 'title'),
    text(2, 1, 'Dates and durations come from the program; the workbook cannot level crews.', 'note'),
    ...headingRow(3, titles),
    ...rows,
  ];
}
