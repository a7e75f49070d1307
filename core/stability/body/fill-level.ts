import type { Wetted } from '../geometry/wetted';
import { reach, reachWithin, wet, type Attitude, type Solid } from './body';

function atTheEnd(solid: Solid, at: Attitude, volume: number, sum: Wetted): number {
  const { low, high } = reach(solid, at);
  if (volume <= 0) {
    wet(solid, at, low, sum);
    return low;
  }
  wet(solid, at, high + 1e-9, sum);
  return high;
}

/**
 * The level at which a solid holds a volume (m3), and its sums there: Newton with the water surface as slope,
 * kept inside a bracket. Empty gives its lowest point, full its highest.
 * @param guess a level near the answer, when one is known.
 */
export function fillLevel(
  solid: Solid,
  at: Attitude,
  volume: number,
  sum: Wetted,
  guess = Number.NaN,
): number {
  if (volume >= solid.capacity || volume <= 0) return atTheEnd(solid, at, volume, sum);
  let { low, high } = reachWithin(solid, at);
  const tolerance = 1e-11 * solid.capacity;
  let level = guess > low && guess < high ? guess : low + ((high - low) * volume) / solid.capacity;
  for (let i = 0; i < 80; i++) {
    const excess = wet(solid, at, level, sum).volume - volume;
    if (Math.abs(excess) <= tolerance) break;
    if (excess > 0) high = level;
    else low = level;
    const next = level - excess / sum.area;
    level = next > low && next < high ? next : (low + high) / 2;
    if (high - low < 1e-13) break;
  }
  return level;
}
