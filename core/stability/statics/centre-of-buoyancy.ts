/**
 * Height of the centre of buoyancy above the keel, m, of a full form (midship coefficient above 0.9).
 * @source Morrish (Normand): KB = (5T/2 - V/Aw) / 3; Lewis (ed.), Principles of Naval Architecture, 1988.
 */
export function kbMorrish(draught: number, volume: number, waterplaneArea: number): number {
  return (2.5 * draught - volume / waterplaneArea) / 3;
}

/**
 * Height of the centre of buoyancy above the keel, m, of a fine form (midship coefficient 0.9 or less).
 * @source Posdunine and Lackenby: KB / T = 1 / (1 + Cb / Cwp).
 */
export function kbPosdunine(
  draught: number,
  blockCoefficient: number,
  waterplaneCoefficient: number,
): number {
  return draught / (1 + blockCoefficient / waterplaneCoefficient);
}
