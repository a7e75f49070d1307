import { dollarsOf } from '../money';
import type { MeasurementId, UprightResult } from '../flooding';
import type { EstimateParts } from './evaluate';

/** The work item by which each measurement is taken. */
const TAKEN_BY: Readonly<Record<MeasurementId, string>> = {
  inclining: 'inclining',
  'weight list': 'weight-survey',
  'bulkhead survey': 'compartment-survey',
  'draught survey': 'hull-visit',
};

/** What a measurement costs and takes, from the lines of the estimate. */
export interface MeasurementPrice {
  /** Direct cost, dollars. */
  readonly cost: number;
  /** Work days of the item. */
  readonly days: number;
}

/**
 * The price of each measurement that the estimate has a line for: direct cost and work days of its work item. One
 * that was taken out of the estimate has no price.
 */
export function measurementPrices(parts: EstimateParts): Partial<Record<MeasurementId, MeasurementPrice>> {
  const { money, schedule } = parts;
  if (money === undefined) return {};
  return Object.fromEntries(
    Object.entries(TAKEN_BY).flatMap(([measurement, item]) => {
      const isIn = parts.items.some(({ id }) => id === item);
      const direct = isIn ? money.result.money(money.lines.columns.direct, item) : undefined;
      const activity = schedule.activities.find(({ id }) => id === item);
      if (direct === undefined || activity === undefined) return [];
      return [[measurement, { cost: dollarsOf(direct), days: activity.workDays }]];
    }),
  );
}

/** A result whose one measurement that would settle the verdict carries its price. */
export function withMeasurementPrice(upright: UprightResult, parts: EstimateParts): UprightResult {
  const price = upright.settles && measurementPrices(parts)[upright.settles.measurement];
  return upright.settles === undefined || price === undefined
    ? upright
    : { ...upright, settles: { ...upright.settles, ...price } };
}
