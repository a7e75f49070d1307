/** A towed barge in SI: metres, m2, tonnes, m/s, days since docking. */
export interface TowedBarge {
  readonly length: number;
  readonly wettedSurface: number;
  readonly displacement: number;
  readonly speed: number;
  readonly daysSinceDock: number;
  readonly windage: number;
  readonly windSpeed: number;
  /** Shape and height coefficients of the wind area, multiplied. */
  readonly windCoefficient: number;
  readonly viscosity: number;
}

/** Newtons, by part. */
export interface BargeResistance {
  readonly friction: number;
  readonly wave: number;
  readonly air: number;
}

const SEA_KILOGRAMS = 1025;
const AIR_KILOGRAMS = 1.22;

/**
 * Resistance of a towed barge, N: ITTC 1957 friction with fouling by days since dock and 0.0004 for roughness,
 * 12 N for each tonne, and air.
 * @source Worked sheet of a classification society's towing rules.
 */
export function bargeResistance(barge: TowedBarge): BargeResistance {
  const reynolds = (barge.speed * barge.length) / barge.viscosity;
  const smooth = 0.075 / (Math.log10(reynolds) - 2) ** 2;
  const rough = smooth * (1 + 0.008 * barge.daysSinceDock) + 0.0004;
  return {
    friction: 0.5 * SEA_KILOGRAMS * rough * barge.wettedSurface * barge.speed ** 2,
    wave: 12 * barge.displacement,
    air: 0.5 * barge.windCoefficient * AIR_KILOGRAMS * barge.windage * barge.windSpeed ** 2,
  };
}
