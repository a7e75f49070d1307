import { compareDecimals, decimalProduct } from '../units';
import { tripPoint, trips } from './trips';
import type { TripPoint } from './schema';

/** The metals of the leach test. */
export const LEACH_METALS = [
  'lead',
  'chromium',
  'cadmium',
  'arsenic',
  'mercury',
  'selenium',
  'silver',
  'barium',
] as const;
export type LeachMetal = (typeof LEACH_METALS)[number];

/**
 * Whether a leach result makes the waste hazardous.
 * @param milligramsPerLitre decimal text.
 * @source 40 CFR 261.24 table 1
 */
export function failsLeachTest(
  points: readonly TripPoint[],
  metal: LeachMetal,
  milligramsPerLitre: string,
): boolean {
  return trips(tripPoint(points, `leach-${metal}`), milligramsPerLitre);
}

/** The total content, in mg/kg, from which the leach test is asked for: the leach limit times twenty. */
export function totalThatAsks(points: readonly TripPoint[], metal: LeachMetal): string {
  const limit = tripPoint(points, `leach-${metal}`).figure.value;
  return decimalProduct(limit, tripPoint(points, 'leach-screen').figure.value);
}

/**
 * The twenty-times screen: below it a total content cannot fail the leach test (20 parts of fluid to one of solid);
 * at or above it the test is asked for.
 * @param milligramsPerKilogram decimal text.
 * @source SW-846 method 1311, section 1.2
 */
export function asksForLeachTest(
  points: readonly TripPoint[],
  metal: LeachMetal,
  milligramsPerKilogram: string,
): boolean {
  return compareDecimals(milligramsPerKilogram, totalThatAsks(points, metal)) >= 0;
}
