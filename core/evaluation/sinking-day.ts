import type { Evaluation } from './evaluate';

/** An activity and the last of its days. */
export interface DatedActivity {
  readonly id: string;
  readonly title: string;
  readonly date: string;
}

/** The day the ship goes down: the last of the sinking's work that waits for a window of weather. */
export function sinkingDay({ estimate }: Evaluation): DatedActivity | undefined {
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
