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

/** The day the ship goes down: the last of the sinking's work that waits for a window of weather. */
export function sinkingDay({ estimate }: Evaluation): BoardDate | undefined {
  if (estimate === undefined) return undefined;
  const sinking = new Set(
    estimate.items.filter(item => item.stage === 'sinking' && item.window !== undefined).map(item => item.id),
  );
  return estimate.schedule.activities
    .filter(activity => sinking.has(activity.id))
    .map(({ id, title, finish }) => ({ id, title, date: finish }))
    .sort((a, b) => (a.date < b.date ? -1 : 1))
    .at(-1);
}
