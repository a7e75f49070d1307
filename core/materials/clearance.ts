import { compareDecimals, decimalDifference, decimalQuotient } from '../units';
import { tripPoint, trips } from './trips';
import type { TripPoint } from './schema';

/** The water over a reef, lengths as decimal text in feet. */
export interface ReefWater {
  readonly depth: string;
  /** Height of the highest part above the bottom. */
  readonly top: string;
  /** Clearance the permit asks for; practice stands in where it names none. */
  readonly required?: string | undefined;
}

export interface ClearanceResult {
  readonly clearance: string;
  readonly required: string;
  /** Whether the required figure is practice, not the permit's own. */
  readonly byPractice: boolean;
  readonly enough: boolean;
  /** Whether the State's general permit could cover it: top at most half the depth, and never under 6 ft of water. */
  readonly generalPermit: boolean;
}

/**
 * The clearance over a reef against the permit, and the depth rule of the State's general permit.
 * @source Florida Administrative Code 62-330.600(1)(d); practice of 50 ft over the wreck
 */
export function clearanceOver(points: readonly TripPoint[], water: ReefWater): ClearanceResult {
  const practice = tripPoint(points, 'clearance-default').figure.value;
  const required = water.required ?? practice;
  const clearance = decimalDifference(water.depth, water.top);
  const share = decimalQuotient(water.top, water.depth) ?? '1';
  return {
    clearance,
    required,
    byPractice: water.required === undefined,
    enough: compareDecimals(clearance, required) >= 0,
    generalPermit:
      !trips(tripPoint(points, 'florida-depth-share'), share) &&
      !trips(tripPoint(points, 'florida-least-water'), clearance),
  };
}
