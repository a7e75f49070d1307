import { dayOf, isoOf } from '../calendar';
import { limitOf, tripPoint, trips } from './trips';
import type { TripPoint } from './schema';

/** Whether a solid product of this content (parts per million by weight) is PCB bulk product waste. @source 40 CFR 761.3 */
export function isPcbBulkProduct(points: readonly TripPoint[], ppm: string): boolean {
  return trips(tripPoint(points, 'pcb-bulk-product'), ppm);
}

/** The routes for PCB bulk product waste. */
export const PCB_ROUTES = ['state-landfill', 'tsca-landfill', 'risk-based'] as const;
export type PcbRoute = (typeof PCB_ROUTES)[number];

/** What a route asks, and its rule. */
export interface PcbRouteDuty {
  readonly route: PcbRoute;
  readonly rule: string;
  /** Calendar days of written notice before the first shipment; none where the route asks for none. */
  readonly noticeDays?: number;
  /** Written approval before any sampling or disposal under the route. */
  readonly approvalFirst: boolean;
  readonly words: string;
}

/**
 * What a disposal route asks before the first load.
 * @source 40 CFR 761.62(a) TSCA landfill, (b) State-permitted landfill, (c) risk-based approval
 */
export function pcbRouteDuty(points: readonly TripPoint[], route: PcbRoute): PcbRouteDuty {
  switch (route) {
    case 'state-landfill':
      return {
        route,
        rule: '40 CFR 761.62(b)',
        noticeDays: limitOf(points, 'pcb-landfill-notice', 'day'),
        approvalFirst: false,
        words: 'Written notice to the landfill before the first shipment; records kept three years.',
      };
    case 'tsca-landfill':
      return {
        route,
        rule: '40 CFR 761.62(a)',
        approvalFirst: false,
        words: 'A landfill approved under the act; needed where the State or its landfills refuse.',
      };
    case 'risk-based':
      return {
        route,
        rule: '40 CFR 761.62(c)',
        approvalFirst: true,
        words:
          'No sampling or disposal under this route before written approval; the rule states no time limit.',
      };
  }
}

/** The latest day of the written notice before the first shipment to a State-permitted landfill. @source 40 CFR 761.62(b) */
export function pcbNoticeBy(points: readonly TripPoint[], firstShipment: string): string {
  return isoOf(dayOf(firstShipment) - limitOf(points, 'pcb-landfill-notice', 'day'));
}
