import { dayOf, isoOf } from '../../calendar';
import { isObligation } from '../../estimate';
import type { EstimateParts } from '../evaluate';
import { obligationStart } from '../timing';

/** From when to when a line is worked on, both days counted. */
export interface LineSpan {
  readonly start: string;
  readonly finish: string;
}

/** When each line is worked on: activities, spans, and what the owner is bound to after the sinking. */
export function lineSpans({ schedule, planned }: EstimateParts): Map<string, LineSpan> {
  const spans = new Map<string, LineSpan>(
    [...schedule.activities, ...schedule.hammocks].map(({ id, start, finish }) => [id, { start, finish }]),
  );
  for (const { item, days } of planned.filter(plan => isObligation(plan.item))) {
    const after = item.after.map(one => one.item);
    const start = obligationStart(after, schedule);
    spans.set(item.id, { start, finish: isoOf(dayOf(start) + Math.max(0, Math.ceil(days) - 1)) });
  }
  return spans;
}
