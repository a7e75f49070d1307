/** A tow for the quick estimate: tonnes, knots, metres. */
export interface QuickTow {
  readonly displacement: number;
  readonly knots: number;
  readonly breadth: number;
  /** Height of the wind area above the water, deck cargo included. */
  readonly windHeight: number;
}

/**
 * Bollard pull, t: (D^(2/3) v^3 / 7200 + c B D1) K.
 * @param sea coefficient of wind and wave; 0.06 in the wide-spread form (from memory).
 * @param exposure K: 1 to 3 exposed, 0.75 to 2 sheltered, 0.5 to 1.5 protected water.
 * @source Towing guidance of public authorities; K ranges published, 0.06 from memory.
 */
export function quickBollardPull(tow: QuickTow, sea = 0.06, exposure = 1): number {
  const hull = (tow.displacement ** (2 / 3) * tow.knots ** 3) / 7200;
  return (hull + sea * tow.breadth * tow.windHeight) * exposure;
}

/** Bollard pull, long tons, of a tug by its brake horsepower, open propellers. @source US Navy towing manual. */
export function tugBollardPull(brakeHorsepower: number): number {
  return (brakeHorsepower * 30) / 2240;
}

/** Share of the bollard pull left at towing speed. Judgement. */
export const PULL_AT_SPEED = 0.75;

/** Bollard pull, t, a tug needs so that its pull at speed covers the resistance (t) with a margin. */
export function neededBollardPull(resistance: number, margin = 1.1): number {
  return (resistance * margin) / PULL_AT_SPEED;
}
