/** Cubic number L B D / 100, in the cube of the unit given. @source Watson, Practical Ship Design, 1998, 4.4.1. */
export function cubicNumber(length: number, breadth: number, depth: number): number {
  return (length * breadth * depth) / 100;
}

/** Displacement, t, of a hull: rho Cb L B T. @source Watson, Practical Ship Design, 1998, eq. 3.1, shell left out. */
export function displacementFromBlock(
  blockCoefficient: number,
  hull: { length: number; breadth: number; draught: number },
  density = 1.025,
): number {
  return density * blockCoefficient * hull.length * hull.breadth * hull.draught;
}
