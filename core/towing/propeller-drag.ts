/**
 * Kinds of ship by the ratio of length times beam to expanded propeller area.
 * @source UFC 4-159-03, table of propeller area ratios.
 */
export const PROPELLER_AREA_RATIO = {
  destroyer: 100,
  cruiser: 160,
  carrier: 125,
  cargo: 240,
  tanker: 270,
  submarine: 125,
} as const;

export type PropellerKind = keyof typeof PROPELLER_AREA_RATIO;

/** Developed propeller area, m2: L B / ratio / 0.838. @source UFC 4-159-03 for the ratio; 0.838 from memory. */
export function propellerArea(length: number, breadth: number, kind: PropellerKind): number {
  return (length * breadth) / PROPELLER_AREA_RATIO[kind] / 0.838;
}

/** Drag of locked propellers, kN, at a speed in m/s. @source UFC 4-159-03: rho V^2 A C / 2 with C = 1. */
export function propellerDrag(area: number, speed: number): number {
  return 0.5 * 1.025 * speed ** 2 * area;
}
