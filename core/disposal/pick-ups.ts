import { dayOf, monthEnd, type DayNumber } from '../calendar';
import type { GeneratorCategory, GeneratorLimits } from './category';

/** A month as far as it decides pick-ups. */
export interface MonthHeld {
  readonly month: string;
  readonly category: GeneratorCategory;
  /** Kilograms generated in the month. */
  readonly kilograms: number;
  /** The first day on which anything is generated. */
  readonly firstDay: DayNumber;
  /** Streams generated in the month. */
  readonly streams: readonly string[];
}

/** The pick-ups of a month, and the streams that go with them: those generated since the site was last cleared. */
export interface MonthPickUps {
  readonly count: number;
  readonly streams: readonly string[];
}

/** What stands on site: how much, since when, of which streams, under the strictest category since then. */
interface Held {
  readonly kilograms: number;
  readonly oldest: DayNumber;
  readonly strictest: GeneratorCategory;
  readonly streams: readonly string[];
}

/**
 * Pick-ups of each month, driven by the limits of keeping waste: a very small generator holds less than 1,000 kg, a
 * small one at most 6,000 kg and 180 days, a large one 90 days; what is left goes with the last month that generates.
 * What one month leaves stands on in the next: weight, age and streams are carried until a pick-up clears the site.
 * @param months in order, only those that generate counting waste.
 * @source 40 CFR 262.14(a)(4), 262.16(b), 262.17(a)
 */
export function pickUps(limits: GeneratorLimits, months: readonly MonthHeld[]): MonthPickUps[] {
  let held: Held | undefined;
  return months.map((month, i) => {
    const now = added(held, month);
    const loads = fullLoads(limits, now.strictest, now.kilograms);
    // A load takes the oldest first; what it leaves is of this month.
    const left = loads === 0 ? now : { ...fresh(month), kilograms: leftOf(limits, now, loads) };
    const next = months[i + 1];
    const clears =
      left.kilograms > 0 &&
      (next === undefined || dueDay(limits, left.strictest, left.oldest) <= lastDayOf(next.month));
    held = clears || left.kilograms === 0 ? undefined : left;
    const count = loads + (clears ? 1 : 0);
    return { count, streams: count === 0 ? [] : now.streams };
  });
}

function fresh({ kilograms, firstDay, category, streams }: MonthHeld): Held {
  return { kilograms: settled(kilograms), oldest: firstDay, strictest: category, streams };
}

function added(held: Held | undefined, month: MonthHeld): Held {
  if (held === undefined) return fresh(month);
  return {
    kilograms: settled(held.kilograms + month.kilograms),
    oldest: held.oldest,
    strictest: stricter(held.strictest, month.category),
    streams: [...new Set([...held.streams, ...month.streams])],
  };
}

/** Kilograms to the gram: sums of shares are not exact. */
function settled(kilograms: number): number {
  return Math.round(kilograms * 1000) / 1000;
}

/** The last day of a month: waste whose days run out by then goes with the month before. */
function lastDayOf(month: string): DayNumber {
  return monthEnd(dayOf(`${month}-01`));
}

const ORDER: readonly GeneratorCategory[] = ['very small', 'small', 'large'];

function stricter(a: GeneratorCategory, b: GeneratorCategory): GeneratorCategory {
  return ORDER.indexOf(a) >= ORDER.indexOf(b) ? a : b;
}

function dueDay(limits: GeneratorLimits, category: GeneratorCategory, oldest: DayNumber): DayNumber {
  if (category === 'very small') return Number.POSITIVE_INFINITY;
  return oldest + (category === 'large' ? limits.daysLarge : limits.daysSmall);
}

/** The most that may stand on site; a large generator has no limit by weight. */
function mostOf(limits: GeneratorLimits, category: GeneratorCategory): number {
  if (category === 'large') return Number.POSITIVE_INFINITY;
  return category === 'small' ? limits.heldSmall : limits.heldVerySmall;
}

/** Whole loads that the limit by weight asks for: a very small generator must stay below it, a small one may reach it. */
function fullLoads(limits: GeneratorLimits, category: GeneratorCategory, kilograms: number): number {
  const loads = kilograms / mostOf(limits, category);
  return Math.max(0, category === 'small' ? Math.ceil(loads) - 1 : Math.floor(loads));
}

function leftOf(limits: GeneratorLimits, held: Held, loads: number): number {
  return settled(held.kilograms - loads * mostOf(limits, held.strictest));
}
