/**
 * Hull resistance of a dead ship, lb: 1.25 times the curve value (lb per long ton) times the displacement (long
 * tons); the 1.25 is for roughness.
 * @source US Navy towing manual SL740-AA-MAN-010, appendix G (also Army TB 55-1900-232-10).
 */
export function hullResistance(poundsPerLongTon: number, longTons: number): number {
  return 1.25 * poundsPerLongTon * longTons;
}

/**
 * Curve value, lb per long ton, at a tow speed (kn), for a ship of the sample's kind. Read between the points.
 * @source Sample computation of the same appendix; 0.75 at 6 kn is what its arithmetic uses, its text reads 0.70.
 */
const SAMPLE_CURVE: readonly (readonly [knots: number, value: number])[] = [
  [3, 0.15],
  [4, 0.31],
  [5, 0.48],
  [6, 0.75],
];

export function sampleCurve(knots: number): number | undefined {
  const next = SAMPLE_CURVE.findIndex(([speed]) => speed >= knots);
  const [a, b] = [SAMPLE_CURVE[Math.max(0, next - 1)], SAMPLE_CURVE[next]];
  if (!a || !b || knots < a[0]) return undefined;
  if (b[0] === a[0]) return b[1];
  return a[1] + ((b[1] - a[1]) * (knots - a[0])) / (b[0] - a[0]);
}

/** Resistance of locked propellers, lb, from their area in ft2 and the speed in knots. Same source. */
export function lockedPropellerResistance(squareFeet: number, knots: number): number {
  return 3.737 * squareFeet * knots ** 2;
}

/** Wind resistance, lb, from frontal area in ft2 and relative wind in knots; `heading` 1 ahead, 1.2 off the bow. */
export function windResistance(squareFeet: number, knots: number, shape: number, heading = 1): number {
  return 0.00506 * shape * squareFeet * heading * knots ** 2;
}
