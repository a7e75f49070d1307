/** Days of steady towing over a distance, nautical miles at knots. */
export function towDays(nauticalMiles: number, knots: number): number {
  return nauticalMiles / knots / 24;
}

/** Allowance for weather on top of the steady days. @source Judgement: 25 to 40 per cent. */
export const WEATHER_ALLOWANCE = { low: 0.25, likely: 0.3, high: 0.4 } as const;

/** Days to plan for: steady towing and the weather allowance. */
export function plannedTowDays(
  nauticalMiles: number,
  knots: number,
  allowance: number = WEATHER_ALLOWANCE.likely,
): number {
  return towDays(nauticalMiles, knots) * (1 + allowance);
}
