import { GRAVITY } from '../../stability';

/**
 * Discharge coefficient of a sharp-edged cut. @source Common practice in flooding studies 0.6; ragged torch holes
 * 0.55 to 0.62 (judgement), free edges of large openings 0.70 to 0.83 measured in models (from memory).
 */
export const SHARP_EDGE = 0.6;

/** Flow, m3/s, through an opening (m2) under a head (m): Q = Cd A sqrt(2 g h). @source Torricelli; any hydraulics text. */
export function orificeFlow(area: number, head: number, discharge = SHARP_EDGE): number {
  return discharge * area * Math.sqrt(2 * GRAVITY * head);
}

/** Flow, m3/s, of a jet through a rectangle of this breadth (m) whose edges lie `top` and `bottom` metres deep. */
export function weirFlow(breadth: number, top: number, bottom: number, discharge = SHARP_EDGE): number {
  const upper = Math.max(0, top);
  return (2 / 3) * discharge * breadth * Math.sqrt(2 * GRAVITY) * (bottom ** 1.5 - upper ** 1.5);
}

/** Discharge coefficient that a measured or tabulated flow (m3/s) implies. */
export function impliedDischarge(flow: number, area: number, head: number): number {
  return flow / orificeFlow(area, head, 1);
}
