/** Wetted surface, m2: 1.7 L T + V / T. @source Denny and Mumford; UFC 4-159-03 eq. 18. */
export function wettedSurfaceMumford(length: number, draught: number, volume: number): number {
  return 1.7 * length * draught + volume / draught;
}

/** A hull with its coefficients of form; `bulbArea` is the transverse area of the bulb, m2. */
export interface HoltropHull {
  readonly length: number;
  readonly breadth: number;
  readonly draught: number;
  readonly block: number;
  readonly midship: number;
  readonly waterplane: number;
  readonly bulbArea: number;
}

/** Wetted surface of the bare hull, m2. @source Holtrop and Mennen, Int. Shipbuilding Progress 29, 1982 (from memory). */
export function wettedSurfaceHoltrop(hull: HoltropHull): number {
  const { length, breadth, draught, block, midship, waterplane, bulbArea } = hull;
  const form =
    0.453 + 0.4425 * block - 0.2862 * midship - (0.003467 * breadth) / draught + 0.3696 * waterplane;
  return length * (2 * draught + breadth) * Math.sqrt(midship) * form + (2.38 * bulbArea) / block;
}
