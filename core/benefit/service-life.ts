import { corrosionOf, type BenefitRules } from './rules';

/** How long plate lasts, as a band of whole years. It is never a date. */
export interface LifeBand {
  readonly lowYears: number;
  readonly highYears: number;
  /** The corrosion behind each end, mm a year for both faces together. */
  readonly fastest: number;
  readonly slowest: number;
}

/** Sea water stands on both sides of a sunken plate. */
const FACES = 2;

/**
 * The life of plate: its thickness over the published corrosion rates, from the fast end of the working range of
 * wreck hulls to the slow long-term rate on both faces. Rates of one wreck do not carry over to another, so the
 * band is shown whole.
 * @param thickness of the plate that matters, mm.
 * @source R. E. Melchers, Corrosion (2021), 0.06 mm a year and face; Glover (2024), 0.1 to 0.4 mm a year.
 */
export function serviceLife(thickness: number, rules: BenefitRules): LifeBand {
  const slowest = FACES * Number(corrosionOf(rules, 'slow').value);
  const fastest = Number(corrosionOf(rules, 'wreck-high').value);
  return {
    lowYears: Math.round(thickness / fastest),
    highYears: Math.round(thickness / slowest),
    fastest,
    slowest,
  };
}
