import { known } from '../base';
import { dayOf, monthOf, type DayNumber } from '../calendar';
import { generatorCategory, type GeneratorCategory, type GeneratorLimits } from './category';
import { plannedEvent, type EpisodicEvent } from './episode';
import { pickUps } from './pick-ups';
import { monthlyShares, workedDays, type Generation } from './spread';

/** A calendar month of the site: what it generates that counts, its category and its pick-ups. */
export interface GeneratorMonth {
  readonly month: string;
  /** Kilograms that count, those of an episodic event left out. */
  readonly counted: number;
  readonly acute: number;
  /** Kilograms of counting streams in all, those of an episodic event included. */
  readonly generated: number;
  readonly category: GeneratorCategory;
  readonly pickUps: number;
  /** Streams generated in the month. */
  readonly streams: readonly string[];
  /** Streams that go with its pick-ups: also those that earlier months left on site. */
  readonly pickedUp: readonly string[];
}

/** A part of what an activity generates: in one month, inside or outside an episodic event. */
export interface GeneratedShare {
  readonly item: string;
  readonly stream: string;
  readonly month: string;
  /** Share of the activity's tonnes of the stream, 0 to 1. */
  readonly share: number;
  /** Share of its tonnes that counts towards the category of the month. */
  readonly counted: number;
}

/** The generator category by month, and what it rests on. */
export interface GeneratorPlan {
  readonly months: readonly GeneratorMonth[];
  readonly shares: readonly GeneratedShare[];
  readonly event?: EpisodicEvent;
}

/**
 * The generator category of every month in which the site generates hazardous waste, from the schedule: the tonnes of
 * each counting stream are spread over the work days of the activity that makes them.
 * @param episodic whether a planned episodic event is elected: what is generated in it counts for no month.
 * @source 40 CFR 262.13 and 262 subpart L
 */
export function generatorPlan(
  limits: GeneratorLimits,
  generation: readonly Generation[],
  episodic: boolean,
): GeneratorPlan {
  const counting = generation.filter(one => one.counts && one.kilograms > 0);
  const event = episodic ? plannedEvent(limits, counting) : undefined;
  const parts = counting.map(one => ({ one, days: workedDays(one) }));
  const shares = parts.flatMap(({ one, days }) => sharesOf(one, days, event));
  const kilograms = new Map(counting.map(one => [`${one.item}.${one.stream}`, one]));
  const firstDays = new Map<string, DayNumber>();
  for (const day of parts.flatMap(part => part.days)) {
    const known = firstDays.get(monthOf(day));
    if (known === undefined || day < known) firstDays.set(monthOf(day), day);
  }
  const months = [...firstDays.keys()].sort().map(month => monthOfSite(limits, month, shares, kilograms));
  return {
    months: withPickUps(limits, months, firstDays, event),
    shares,
    ...(event === undefined ? {} : { event }),
  };
}

type MonthWithout = Omit<GeneratorMonth, 'pickUps' | 'pickedUp'>;

/**
 * The months with their pick-ups: what counts is kept and picked up by the limits of its category; what an episodic
 * event makes goes by itself, at the latest when the event ends.
 * @source 40 CFR 262.232(a)(5), 262.16(b), 262.17(a)
 */
function withPickUps(
  limits: GeneratorLimits,
  months: readonly MonthWithout[],
  firstDays: ReadonlyMap<string, DayNumber>,
  event: EpisodicEvent | undefined,
): GeneratorMonth[] {
  const kept = months.filter(month => month.counted > 0);
  const counts = pickUps(
    limits,
    kept.map(month => ({ ...month, kilograms: month.counted, firstDay: known(firstDays, month.month) })),
  );
  const inEvent = event === undefined ? [] : months.filter(month => month.generated > month.counted);
  const eventStreams = [...new Set(inEvent.flatMap(month => month.streams))];
  return months.map(month => {
    const own = counts[kept.indexOf(month)] ?? { count: 0, streams: [] };
    const ends = month === inEvent.at(-1);
    return {
      ...month,
      pickUps: own.count + (ends ? 1 : 0),
      pickedUp: [...new Set([...own.streams, ...(ends ? eventStreams : [])])],
    };
  });
}

function sharesOf(
  one: Generation,
  days: readonly number[],
  event: EpisodicEvent | undefined,
): GeneratedShare[] {
  const outside = days.filter(
    day => event === undefined || day < dayOf(event.start) || day > dayOf(event.finish),
  );
  const counted = monthlyShares(outside);
  return [...monthlyShares(days)].map(([month, share]) => ({
    item: one.item,
    stream: one.stream,
    month,
    share,
    counted: ((counted.get(month) ?? 0) * outside.length) / days.length,
  }));
}

function monthOfSite(
  limits: GeneratorLimits,
  month: string,
  shares: readonly GeneratedShare[],
  of: ReadonlyMap<string, Generation>,
): MonthWithout {
  const own = shares.filter(share => share.month === month);
  const sum = (amount: (share: GeneratedShare) => number, only?: boolean) =>
    settled(
      own.reduce((total, share) => {
        const one = of.get(`${share.item}.${share.stream}`);
        if (one === undefined || (only !== undefined && one.acute !== only)) return total;
        return total + one.kilograms * amount(share);
      }, 0),
    );
  const [counted, acute] = [sum(share => share.counted, false), sum(share => share.counted, true)];
  return {
    month,
    counted: settled(counted + acute),
    acute,
    generated: sum(share => share.share),
    category: generatorCategory(limits, { hazardous: counted, acute }),
    streams: [...new Set(own.map(share => share.stream))],
  };
}

/** Kilograms to the gram: sums of shares are not exact. */
function settled(kilograms: number): number {
  return Math.round(kilograms * 1000) / 1000;
}
