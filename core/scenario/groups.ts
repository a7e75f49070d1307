import type { EstimateInput } from '../estimate';
import type { EstimateParts } from '../evaluation';

/** What can separate two scenarios, in the order a reader meets it. */
export const GROUPS = ['scope', 'quantity', 'duration', 'price'] as const;
export type GroupKey = (typeof GROUPS)[number];

/** What each group is called where people read. */
export const GROUP_TITLES: Readonly<Record<GroupKey, string>> = {
  scope: 'Work that only one of them has',
  quantity: 'Quantities, crews and ways of working',
  duration: 'How long things take and when',
  price: 'Rates and price date',
};

/** The groups in which two evaluations differ: the others separate nothing. */
export function differingGroups(a: EstimateParts, b: EstimateParts): GroupKey[] {
  return GROUPS.filter(group => fingerprint(group, a) !== fingerprint(group, b));
}

const FINGERPRINTS: Readonly<Record<GroupKey, (parts: EstimateParts) => unknown>> = {
  scope: ({ items }) => items.map(item => item.id),
  quantity: ({ input }) => [
    input.ship,
    input.years,
    input.plant,
    input.options,
    [...input.presence],
    [...input.measured],
    [...input.adjustments],
  ],
  duration: ({ input, planned, schedule }) => [
    input.calendars,
    input.shiftHours,
    planned.map(plan => [plan.item.id, plan.days]),
    schedule.activities.map(({ id, start, finish }) => [id, start, finish]),
    schedule.hammocks,
  ],
  price: ({ input }) => [pricesOf(input), input.overtimeShare],
};

function pricesOf({ overrides, prices }: EstimateInput): unknown {
  return [[...overrides], prices];
}

function fingerprint(group: GroupKey, parts: EstimateParts): string {
  return JSON.stringify(FINGERPRINTS[group](parts));
}
