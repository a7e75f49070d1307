import { limitOf, type TripPoint } from '../materials';

/** The category of a generator of hazardous waste in one calendar month. */
export const GENERATOR_CATEGORIES = ['very small', 'small', 'large'] as const;
export type GeneratorCategory = (typeof GENERATOR_CATEGORIES)[number];

/** Kilograms of counting waste generated at one site in one calendar month. */
export interface MonthlyGeneration {
  readonly hazardous: number;
  readonly acute: number;
  /** Residue of cleaning up acute spills. */
  readonly acuteResidue?: number;
}

/** The limits of the categories and of keeping waste, as read from the trip-points. */
export interface GeneratorLimits {
  readonly verySmall: number;
  readonly large: number;
  readonly acute: number;
  readonly acuteResidue: number;
  readonly heldVerySmall: number;
  readonly heldSmall: number;
  readonly daysSmall: number;
  readonly daysLarge: number;
  readonly episodeNotice: number;
  readonly episodeDays: number;
}

/** Reads the limits, in kilograms and days. @throws BugError when a trip-point is missing. */
export function generatorLimits(points: readonly TripPoint[]): GeneratorLimits {
  const kilograms = (id: string) => limitOf(points, id, 'kg');
  const days = (id: string) => limitOf(points, id, 'day');
  return {
    verySmall: kilograms('generator-very-small'),
    large: kilograms('generator-large'),
    acute: kilograms('generator-acute'),
    acuteResidue: kilograms('generator-acute-residue'),
    heldVerySmall: kilograms('accumulation-very-small'),
    heldSmall: kilograms('accumulation-small'),
    daysSmall: days('accumulation-small-days'),
    daysLarge: days('accumulation-large-days'),
    episodeNotice: days('episodic-notice'),
    episodeDays: days('episodic-length'),
  };
}

/**
 * The category of a month: very small up to 100 kg, small above it and below 1,000 kg, large from 1,000 kg, or with more
 * than 1 kg of acute waste or 100 kg of its spill residue. The stricter of the counts governs.
 * @source 40 CFR 262.13, table 1
 */
export function generatorCategory(limits: GeneratorLimits, month: MonthlyGeneration): GeneratorCategory {
  const acute = month.acute > limits.acute || (month.acuteResidue ?? 0) > limits.acuteResidue;
  if (acute || month.hazardous >= limits.large) return 'large';
  return month.hazardous > limits.verySmall ? 'small' : 'very small';
}
