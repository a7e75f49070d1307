import { GRAVITY, SEA_WATER } from '../../stability';

/** Atmospheric pressure, kPa. @source ISO 2533 standard atmosphere. */
export const ATMOSPHERE = 101.325;
/** Density of air, t/m3. @source ISO 2533 standard atmosphere at 15 C. */
export const AIR = 0.001225;

/** Vent area as a share of the opening that keeps the air pressure to a share of the head. Same coefficient both. */
export function ventShare(pressureShare: number): number {
  return Math.sqrt((1 - pressureShare) / pressureShare) * Math.sqrt(AIR / SEA_WATER);
}

/** Share of the head that the air takes with a vent of this share of the opening; 1 without a vent. */
export function airPressureShare(ventToOpening: number): number {
  return 1 / (1 + ventToOpening ** 2 * (SEA_WATER / AIR));
}

/**
 * Level, m above the floor, at which trapped air (isothermal) stops the water: a closed space of height `height`
 * with its floor `depth` metres under the surface.
 * @source Boyle's law: p0 / (1 - y/H) = p0 + rho g (depth - y).
 */
export function trappedAirLevel(height: number, depth: number): number {
  const weight = SEA_WATER * GRAVITY;
  let low = 0;
  let high = Math.min(height, depth);
  for (let i = 0; i < 60; i++) {
    const y = (low + high) / 2;
    if (ATMOSPHERE / (1 - y / height) < ATMOSPHERE + weight * (depth - y)) low = y;
    else high = y;
  }
  return (low + high) / 2;
}
