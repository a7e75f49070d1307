/** Longitudinal metacentric height, m: KB + Cil L^3 B / V - KG. */
export function longitudinalGm(
  hull: { length: number; breadth: number; volume: number; kb: number; kg: number },
  inertiaCoefficient: number,
): number {
  return hull.kb + (inertiaCoefficient * hull.length ** 3 * hull.breadth) / hull.volume - hull.kg;
}

/** Trim, m by the stern, of a mass (t) set `aft` metres behind the centre of flotation: w d L / (W GML). */
export function trimFromMass(
  mass: number,
  aft: number,
  ship: { displacement: number; length: number; longitudinalGm: number },
): number {
  return (mass * aft * ship.length) / (ship.displacement * ship.longitudinalGm);
}
