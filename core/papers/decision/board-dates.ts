import type { Evaluation } from '../../evaluation';

/** A day of the plan, and the activity it is the last day of. */
export interface BoardDate {
  readonly id: string;
  readonly title: string;
  readonly date: string;
}

/** A title that names the board of the county; boards and panels of asbestos are none. */
const OF_THE_BOARD = /^Board\b|\bthe board\b/;

/** Decisions of the board in the schedule, soonest first. */
export function boardDates({ estimate }: Evaluation): BoardDate[] {
  return (estimate?.schedule.activities ?? [])
    .filter(({ title }) => OF_THE_BOARD.test(title))
    .map(({ id, title, finish }) => ({ id, title, date: finish }))
    .sort((a, b) => (a.date < b.date ? -1 : 1));
}
