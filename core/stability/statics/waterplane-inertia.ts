/** Ways to estimate the inertia coefficient Ci of a waterplane: I = Ci L B^3 about the centreline. */
export type InertiaRule = "D'Arcangelo" | 'Eames' | 'McCloghrie';

const rules: Record<InertiaRule, (cwp: number) => number> = {
  "D'Arcangelo": cwp => 0.1216 * cwp - 0.041,
  Eames: cwp => (cwp * cwp) / 11.7,
  McCloghrie: cwp => (1.04 * cwp * cwp) / 12,
};

/**
 * Transverse inertia coefficient of the waterplane, from its area coefficient.
 * @source Parsons, Ship Design and Construction ch. 11 (coefficients quoted from memory there and here).
 */
export function inertiaCoefficient(waterplaneCoefficient: number, rule: InertiaRule): number {
  return rules[rule](waterplaneCoefficient);
}

/** Height of the transverse metacentre above the centre of buoyancy, m: BM = Ci L B^3 / V. */
export function bmFromCoefficient(
  ci: number,
  hull: { length: number; breadth: number; volume: number },
): number {
  return (ci * hull.length * hull.breadth ** 3) / hull.volume;
}

/** Waterplane coefficient of an average section form. @source Schneekluth and Bertram: Cwp = (1 + 2 Cb) / 3. */
export function waterplaneCoefficient(blockCoefficient: number): number {
  return (1 + 2 * blockCoefficient) / 3;
}
