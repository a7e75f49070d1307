import { idOf } from '../sheet';
import type { WorkItem } from '../work';
import { ABSENT, figureCell, type EstimateContext } from './context';
import type { Shown } from './rows';

/** What a work item is measured in. */
export function ownUnit({ parts: { work } }: EstimateContext, item: string): string {
  return work.result.at(work.items.columns.quantity, item).unit;
}

type Column = 'quantity' | 'hours';

/**
 * The quantity or the hours of a work item as the schedule leaves them: an item that lasts as long as others has both by
 * the day, and how many days is known once there is a schedule. Until then they are absent.
 */
export function timedCell(
  context: EstimateContext,
  item: WorkItem,
  column: Column,
  decimals?: number,
): Shown & Required<Pick<Shown, 'why'>> {
  const { work, money } = context.parts;
  if (money !== undefined)
    return figureCell(context, money.result, money.lines.columns[column], item.id, decimals);
  const step = work.items.columns[column];
  if (item.span !== undefined) return { ...ABSENT, why: idOf(step, item.id) };
  return figureCell(context, work.result, step, item.id, decimals);
}

/** The hours of a work item as the schedule leaves them; undefined while they are not known. */
export function timedHours({ parts: { work, money } }: EstimateContext, item: WorkItem): number | undefined {
  if (money !== undefined) return money.result.number(money.lines.columns.hours, item.id);
  return item.span === undefined ? work.result.number(work.items.columns.hours, item.id) : undefined;
}

/** The name of the hours of a work item. */
export function timedHoursName({ parts: { work, money } }: EstimateContext, item: WorkItem): string {
  return idOf(money?.lines.columns.hours ?? work.items.columns.hours, item.id);
}
