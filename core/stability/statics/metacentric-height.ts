/** Height of the centre of gravity after a weight is removed (positive mass) or added (negative mass), m. */
export function kgAfterRemoval(displacement: number, kg: number, mass: number, vcg: number): number {
  return (displacement * kg - mass * vcg) / (displacement - mass);
}

/**
 * Free-surface correction of GM, m: the sum of density times surface inertia over displacement.
 * @param equalDivisions number of equal strips the tank is split into lengthwise of the ship: the correction
 * falls with its square.
 */
export function freeSurfaceCorrection(
  tank: { length: number; breadth: number; density: number },
  displacement: number,
  equalDivisions = 1,
): number {
  const inertia = (tank.length * tank.breadth ** 3) / 12;
  return (tank.density * inertia) / displacement / equalDivisions ** 2;
}

/** GM of a box barge afloat: KB = T / 2, BM = B^2 / (12 T). */
export function boxGm(box: { breadth: number; draught: number; kg: number }): number {
  return box.draught / 2 + box.breadth ** 2 / (12 * box.draught) - box.kg;
}
