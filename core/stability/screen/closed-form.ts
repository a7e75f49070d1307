import { SEA_WATER } from '../constants';

/** A box or a ship written as one: metres, tonnes, inertia of the waterplane in m4, area in m2. */
export interface ClosedFormShip {
  readonly displacement: number;
  readonly kg: number;
  readonly area: number;
  readonly inertia: number;
  /** Share of the waterplane that floods, permeability included. */
  readonly floodedShare: number;
  /** Equal strips the flooded space is split into across the ship. */
  readonly strips: number;
}

/** Draught, m, at an internal level, m: the light draught and what the water adds. */
export function draughtAtLevel(ship: ClosedFormShip, level: number): number {
  return ship.displacement / (SEA_WATER * ship.area) + ship.floodedShare * level;
}

/**
 * Small-angle GM, m, of a wall-sided ship with water at a common level inside, referred to the light weight. It is
 * lowest at the first centimetre of free water of nearly every hull and harmless there: never a verdict.
 * @source From the metacentric formulas of Lewis (ed.), Principles of Naval Architecture, 1988, vol. I.
 */
export function sinkScreenGm(ship: ClosedFormShip, level: number): number {
  const volume = ship.displacement / SEA_WATER;
  const t = draughtAtLevel(ship, level);
  const share = ship.floodedShare;
  const free = level > 0 ? share / ship.strips ** 2 : 0;
  const height = (ship.area * (t * t - share * level * level)) / 2;
  return (ship.inertia * (1 - free) + height) / volume - ship.kg;
}
