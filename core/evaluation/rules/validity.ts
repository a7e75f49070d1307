import { at, type Finding } from '../../base';
import type { WorkSheet } from '../../estimate';

/**
 * Relationships used outside the range they are meant to hold over: one finding for each driver and range, with the
 * items that scale from it.
 */
export function validityFindings(work: WorkSheet): Finding[] {
  const outside = new Map<string, { driver: string; value: number; range: string; items: string[] }>();
  for (const { item } of work.rows) {
    const { valid } = item;
    const value = driverValue(work, item);
    if (valid === undefined || value === undefined || value === 0) continue;
    if (value >= Number(valid.from.value) && value <= Number(valid.to.value)) continue;
    const { unit } = valid.from;
    const range = `${valid.from.value} to ${valid.to.value} ${unit === '1' ? '' : unit}`.trim();
    const id = `${item.driver} ${item.disposes ?? ''} ${range}`;
    const known = outside.get(id) ?? { driver: item.disposes ?? item.driver, value, range, items: [] };
    outside.set(id, { ...known, items: [...known.items, item.id] });
  }
  return [...outside.values()].map(({ driver, value, range, items }) => ({
    code: 'estimate/outside-range',
    weight: 'warns',
    place: `/items/${at(items, 0)}`,
    message: `${driver} is ${value}; the relationships of ${namesOf(items)} are meant for ${range}.`,
    meaning: 'Their hours and costs are carried beyond what they were set up for.',
    remedy: 'Check these lines against a quote, or state their quantities and hours.',
  }));
}

function driverValue(work: WorkSheet, item: WorkSheet['rows'][number]['item']): number | undefined {
  const { drivers, streams, result } = work;
  if (item.disposes !== undefined)
    return streams.scope.index.has(item.disposes)
      ? result.number(streams.columns.tonnes, item.disposes)
      : undefined;
  return drivers.scope.index.has(item.driver)
    ? result.number(drivers.columns.number, item.driver)
    : undefined;
}

const NAMED = 3;

function namesOf(items: readonly string[]): string {
  const shown = items.slice(0, NAMED).join(', ');
  return items.length > NAMED ? `${shown} and ${items.length - NAMED} more` : shown;
}
