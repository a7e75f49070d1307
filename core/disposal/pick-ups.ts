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
}

/**
 * Pick-ups of each month, driven by the limits of keeping waste: a very small generator holds less than 1,000 kg, a
 * small one at most 6,000 kg and 180 days, a large one 90 days; what is left goes with the last month that generates.
 * The strictest category since the oldest waste on site governs its days.
 * @param months in order, only those that generate counting waste.
 * @source 40 CFR 262.14(a)(4), 262.16(b), 262.17(a)
 */
export function pickUps(limits: GeneratorLimits, months: readonly MonthHeld[]): number[] {
  let held = 0;
  let oldest: DayNumber | undefined;
  let strictest: GeneratorCategory = 'very small';
  return months.map((month, i) => {
    if (held === 0 || oldest === undefined) [oldest, strictest] = [month.firstDay, month.category];
    strictest = stricter(strictest, month.category);
    const full = fullLoads(limits, strictest, held + month.kilograms);
    held += month.kilograms - full.kilograms;
    const due = dueDay(limits, strictest, oldest);
    const next = months[i + 1];
    const until = next === undefined ? Number.POSITIVE_INFINITY : lastDayOf(next.month);
    const clears = held > 0 && due <= until;
    if (clears) held = 0;
    return full.count + (clears || (next === undefined && held > 0) ? 1 : 0);
  });
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

/** Whole loads that the limit by weight asks for. */
function fullLoads(limits: GeneratorLimits, category: GeneratorCategory, kilograms: number) {
  if (category === 'large') return { count: 0, kilograms: 0 };
  const most = category === 'small' ? limits.heldSmall : limits.heldVerySmall;
  const settled = Math.round(kilograms * 1000) / 1000;
  const count = category === 'small' ? Math.ceil(settled / most) - 1 : Math.floor(settled / most);
  const whole = Math.max(0, count);
  return { count: whole, kilograms: whole * most };
}
