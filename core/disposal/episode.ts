import { known } from '../base';
import { isoOf } from '../calendar';
import type { GeneratorLimits } from './category';
import { workedDays, type Generation } from './spread';

/** A planned episodic event: what is generated in it does not change the category of its months. */
export interface EpisodicEvent {
  readonly start: string;
  readonly finish: string;
  /** The latest day of the notice to the agency. */
  readonly noticeBy: string;
}

/**
 * The event that takes the most waste out of the count: one in the project's first year that generates, at most 60 days
 * long, notified 30 days before. A second event in a year needs a petition and is not planned.
 * @source 40 CFR 262.232(a) and 262.233
 */
export function plannedEvent(
  limits: GeneratorLimits,
  generation: readonly Generation[],
): EpisodicEvent | undefined {
  const byDay = dailyKilograms(generation);
  const days = [...byDay.keys()].sort((a, b) => a - b);
  let best: { day: number; kilograms: number } | undefined;
  for (const day of days) {
    const kilograms = days
      .filter(other => other >= day && other < day + limits.episodeDays)
      .reduce((sum, other) => sum + known(byDay, other), 0);
    if (best === undefined || kilograms > best.kilograms + 1e-9) best = { day, kilograms };
  }
  if (best === undefined) return undefined;
  return {
    start: isoOf(best.day),
    finish: isoOf(best.day + limits.episodeDays - 1),
    noticeBy: isoOf(best.day - limits.episodeNotice),
  };
}

function dailyKilograms(generation: readonly Generation[]): Map<number, number> {
  const byDay = new Map<number, number>();
  for (const one of generation.filter(candidate => candidate.counts)) {
    const days = workedDays(one);
    for (const day of days) byDay.set(day, (byDay.get(day) ?? 0) + one.kilograms / days.length);
  }
  return byDay;
}
