/**
 * What hand oxy-fuel cutting uses and gives off, kg per km of cut and mm of thickness.
 * @source Time-and-motion study at the Alang yards, 2013 (abstract).
 */
export const CUTTING_PER_KM_MM = {
  fuel: 6.2,
  carbonDioxide: 21.77,
  paintToAir: 0.9,
  paintFallen: 1.34,
} as const;

/** Fuel, carbon dioxide and paint, kg, of a length of cut (m) in plate of a thickness (mm). */
export function cuttingConsumption(
  length: number,
  thickness: number,
): Record<keyof typeof CUTTING_PER_KM_MM, number> {
  const measure = (length / 1000) * thickness;
  const { fuel, carbonDioxide, paintToAir, paintFallen } = CUTTING_PER_KM_MM;
  return {
    fuel: fuel * measure,
    carbonDioxide: carbonDioxide * measure,
    paintToAir: paintToAir * measure,
    paintFallen: paintFallen * measure,
  };
}

/** Metres cut in an hour of torch-on time at a handbook speed in inches a minute. */
export function cuttingMetresPerHour(inchesPerMinute: number): number {
  return inchesPerMinute * 0.0254 * 60;
}

/** Gas, m3 per metre of cut, from a handbook flow in cubic feet an hour and a speed in inches a minute. */
export function gasPerMetre(cubicFeetPerHour: number, inchesPerMinute: number): number {
  return (cubicFeetPerHour * 0.3048 ** 3) / cuttingMetresPerHour(inchesPerMinute);
}

/** Clear area, m2, and length of cut, m, of a number of rectangular openings. */
export function openingSetTotals(
  count: number,
  breadth: number,
  height: number,
): { readonly area: number; readonly cutLength: number } {
  return { area: count * breadth * height, cutLength: count * 2 * (breadth + height) };
}
