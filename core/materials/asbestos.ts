import { dayOf, isoOf, noticeBy } from '../calendar';
import { thousandsApart } from '../units';
import { limitOf, tripPoint, trips } from './trips';
import type { TripPoint } from './schema';

/** Regulated asbestos to be disturbed, each amount as decimal text in the unit of the rule. */
export interface AsbestosAmounts {
  /** On pipes, linear feet. */
  readonly pipeFeet: string;
  /** On other components, square feet. */
  readonly squareFeet: string;
  /** Off components, cubic feet. */
  readonly cubicFeet: string;
}

/** What the asbestos rule asks of a job. */
export interface AsbestosDuty {
  /** At or above one of the three amounts: full notification and work practices. */
  readonly regulated: boolean;
  /** A written notice is needed: regulated, or demolition (a load-bearing member is cut) whatever the amount. */
  readonly notice: boolean;
  readonly reasons: readonly string[];
}

const AMOUNTS = [
  ['asbestos-pipe', 'pipeFeet', 'ft of pipe'],
  ['asbestos-surface', 'squareFeet', 'sq ft of other components'],
  ['asbestos-volume', 'cubicFeet', 'cu ft off components'],
] as const;

/** Whether a material of this share of asbestos (0 to 1, polarised light) is asbestos-containing. @source 40 CFR 61 subpart M */
export function isAsbestos(points: readonly TripPoint[], share: string): boolean {
  return trips(tripPoint(points, 'asbestos-content'), share);
}

/**
 * The duty of a job that disturbs asbestos or cuts the structure. Each of the three amounts alone is enough.
 * @param loadBearing whether a load-supporting structural member is taken out: that makes it demolition.
 * @source 40 CFR 61.145(a)(1) and (2)
 */
export function asbestosDuty(
  points: readonly TripPoint[],
  amounts: AsbestosAmounts,
  loadBearing: boolean,
): AsbestosDuty {
  const reached = AMOUNTS.filter(([id, field]) => trips(tripPoint(points, id), amounts[field]));
  const regulated = reached.length > 0;
  return {
    regulated,
    notice: regulated || loadBearing,
    reasons: [
      ...reached.map(([, field, words]) => `${thousandsApart(amounts[field])} ${words}`),
      ...(loadBearing ? ['a load-bearing member is cut: demolition notifies below the amounts too'] : []),
    ],
  };
}

/**
 * The latest day of the notice before asbestos is disturbed or demolition starts: ten working days, Monday to Friday,
 * holidays counted, not the project calendar.
 * @param start `YYYY-MM-DD`.
 * @source 40 CFR 61.145(b)(3)(i), 61.141
 */
export function asbestosNoticeBy(points: readonly TripPoint[], start: string): string {
  return isoOf(noticeBy(dayOf(start), limitOf(points, 'asbestos-notice', 'work-day')));
}
