import { tripPoint, trips } from './trips';
import type { TripPoint } from './schema';

/** What is presumed of tributyltin on the hull. */
export type TbtPresumption = 'presumed' | 'not presumed' | 'cannot tell';

/**
 * Whether tributyltin is presumed, by the year of the last antifouling coating. Without the year nobody can tell.
 * @param sealed whether a sealing coat over the old one is shown.
 * @source Convention on harmful antifouling systems, annex 1; 33 USC 3801 to 3857
 */
export function tbtPresumption(
  points: readonly TripPoint[],
  lastCoating: number | undefined,
  sealed: boolean,
): TbtPresumption {
  if (sealed) return 'not presumed';
  if (lastCoating === undefined) return 'cannot tell';
  return trips(tripPoint(points, 'tbt-last-coating'), String(lastCoating)) ? 'presumed' : 'not presumed';
}
