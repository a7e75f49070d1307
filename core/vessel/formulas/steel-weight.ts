/** A hull with its erections (full width) and houses, metres. */
export interface SteelHull {
  readonly length: number;
  readonly breadth: number;
  readonly depth: number;
  readonly draught: number;
  readonly erections: readonly { readonly length: number; readonly height: number }[];
  readonly houses: readonly { readonly length: number; readonly height: number }[];
}

function profile(parts: SteelHull['houses']): number {
  return parts.reduce((sum, { length, height }) => sum + length * height, 0);
}

/**
 * Equipment numeral E = L (B + T) + 0.85 L (D - T) + 0.85 sum(l1 h1) + 0.75 sum(l2 h2).
 * @source Watson and Gilfillan 1977; Watson, Practical Ship Design, 1998, p. 83 (coefficients from memory).
 */
export function equipmentNumeral(hull: SteelHull): number {
  const shell = hull.length * (hull.breadth + hull.draught);
  const side = 0.85 * hull.length * (hull.depth - hull.draught);
  return shell + side + 0.85 * profile(hull.erections) + 0.75 * profile(hull.houses);
}

/** Block coefficient at 0.8 of the depth: Cb + (1 - Cb) (0.8 D - T) / (3 T). @source Watson and Gilfillan 1977 (from memory). */
export function blockAtDepth(blockCoefficient: number, depth: number, draught: number): number {
  return blockCoefficient + ((1 - blockCoefficient) * (0.8 * depth - draught)) / (3 * draught);
}

/**
 * Steel weight, t: K E^1.36 (1 + 0.5 (Cb' - 0.70)).
 * @param k steel factor of the kind of ship, such as 0.030; Watson, Table 4.1, p. 85.
 * @source Watson and Gilfillan 1977; the 1998 book prints 0.05 for 0.5, under 2 % apart on a common ship.
 */
export function steelWeight(k: number, numeral: number, blockAtDepthValue: number): number {
  return k * numeral ** 1.36 * (1 + 0.5 * (blockAtDepthValue - 0.7));
}
