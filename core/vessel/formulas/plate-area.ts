/** Area of both faces of a tonne of plate, m2/t, by thickness in mm: 2 / (7.85 t). Geometry of steel plate. */
export function plateAreaPerTonne(thickness: number): number {
  return 2 / (7.85 * (thickness / 1000));
}
