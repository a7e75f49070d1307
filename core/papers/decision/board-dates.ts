import type { DatedActivity, Evaluation } from '../../evaluation';

/** A title that names the board of the county; boards and panels of asbestos are none. */
const OF_THE_BOARD = /^Board\b|\bthe board\b/;

/** Decisions of the board in the schedule, soonest first. */
export function boardDates({ estimate }: Evaluation): DatedActivity[] {
  return (estimate?.schedule.activities ?? [])
    .filter(({ title }) => OF_THE_BOARD.test(title))
    .map(({ id, title, finish }) => ({ id, title, date: finish }))
    .sort((a, b) => (a.date < b.date ? -1 : 1));
}
