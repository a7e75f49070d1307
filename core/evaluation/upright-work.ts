import { dollarsOf } from '../money';
import type { EstimateParts } from './evaluate';

/** A work item that follows from the sizes of the openings, as the estimate has it. */
export interface OpeningWork {
  readonly id: string;
  readonly title: string;
  readonly quantity: number;
  readonly unit: string;
  readonly hours: number | undefined;
  /** Crews working at once. */
  readonly crews: number | undefined;
  readonly workDays: number | undefined;
  /** Burning gas, patches and other material, dollars. */
  readonly material: number;
  /** Direct cost, dollars. */
  readonly cost: number;
}

/** Drivers whose quantity is the sizing's: number of openings, length of cut, air escapes, openings inside. */
const DRIVERS = new Set(['shell-openings', 'shell-cut', 'vent-openings', 'inner-openings']);

/** Work items whose quantities come from the sizes of the openings, with hours, crews, days and cost of the estimate. */
export function openingWork(parts: EstimateParts): OpeningWork[] {
  const { money, work, schedule } = parts;
  if (money === undefined) return [];
  const { lines, result } = money;
  return work.rows.flatMap(({ item, own }): OpeningWork[] => {
    if (!('driver' in item) || !DRIVERS.has(item.driver)) return [];
    const number = (step: typeof lines.columns.quantity) => result.number(step, item.id);
    const quantity = number(lines.columns.quantity);
    const hours = result.number(lines.columns.hours, item.id);
    const crews = work.result.number(work.items.columns.crews, item.id);
    const material = result.money(lines.columns.material, item.id);
    const direct = result.money(lines.columns.direct, item.id);
    const activity = schedule.activities.find(({ id }) => id === item.id);
    if (quantity === undefined || material === undefined || direct === undefined) return [];
    return [
      {
        id: item.id,
        title: item.title,
        quantity,
        unit: own,
        hours,
        crews,
        workDays: activity?.workDays,
        material: dollarsOf(material),
        cost: dollarsOf(direct),
      },
    ];
  });
}
