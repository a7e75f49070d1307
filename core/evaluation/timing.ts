import { BugError, known } from '../base';
import { dayOf, isoOf } from '../calendar';
import { isObligation, monthsFrom, type ItemTiming, type PlannedItem, type PriceChoices } from '../estimate';
import type { ScheduledActivity, ScheduleResult } from '../scheduling';

/** Mean days of a month of the Gregorian calendar: 400 years of 146,097 days. */
const DAYS_A_MONTH = 146097 / 4800;

/** When each item happens and how long time-dependent ones last, as the schedule says. */
export function itemTimings(
  planned: readonly PlannedItem[],
  schedule: ScheduleResult,
  prices: PriceChoices,
): Map<string, ItemTiming> {
  const days = new Map(planned.map(plan => [plan.item.id, plan.days]));
  const timings = new Map<string, ItemTiming>();
  const monthsOf = (activity: ScheduledActivity) =>
    String(monthsFrom(prices, middle(activity.start, activity.finish)));
  const at = `${prices.priceDate} ${prices.fixedYear ?? ''}`;
  for (const activity of schedule.activities)
    timings.set(activity.id, timingOf(activity, days.get(activity.id) ?? activity.workDays, at, monthsOf));
  for (const { item, days } of planned.filter(plan => isObligation(plan.item))) {
    const start = obligationStart(
      item.after.map(after => after.item),
      schedule,
    );
    timings.set(item.id, {
      months: String(monthsFrom(prices, middle(start, isoOf(dayOf(start) + days)))),
      days: String(days),
    });
  }
  const units = new Map(
    planned.flatMap(({ item }) => (item.span ? [[item.id, item.span.unit] as const] : [])),
  );
  for (const hammock of schedule.hammocks) {
    const unit = known(units, hammock.id);
    const spans = {
      'work-day': hammock.workDays,
      day: hammock.calendarDays,
      month: Math.round((hammock.calendarDays / DAYS_A_MONTH) * 10) / 10,
    };
    timings.set(hammock.id, {
      span: String(spans[unit]),
      months: String(monthsFrom(prices, middle(hammock.start, hammock.finish))),
      days: String(spans[unit]),
    });
  }
  return timings;
}

interface TimingOf {
  readonly days: number;
  /** The choices of prices, in words. */
  readonly at: string;
  readonly timing: ItemTiming;
}

const TIMINGS = new WeakMap<ScheduledActivity, TimingOf>();

/** The timing of an activity; the same object as before when its dates, its days and the prices are. */
function timingOf(
  activity: ScheduledActivity,
  days: number,
  at: string,
  monthsOf: (activity: ScheduledActivity) => string,
): ItemTiming {
  const known = TIMINGS.get(activity);
  if (known?.days === days && known.at === at) return known.timing;
  const timing = { months: monthsOf(activity), days: String(days) };
  TIMINGS.set(activity, { days, at, timing });
  return timing;
}

function middle(start: string, finish: string): string {
  const [from, to] = [dayOf(start), dayOf(finish)];
  return isoOf(Math.floor((from + to) / 2));
}

/** An obligation begins when the last of what it follows has finished. */
export function obligationStart(after: readonly string[], schedule: ScheduleResult): string {
  const last = schedule.activities
    .filter(activity => after.includes(activity.id))
    .map(activity => activity.finish)
    .sort()
    .at(-1);
  return last ?? wholeSpan(schedule).finish;
}

/** First and last day of a schedule that has activities, and how long that is. @throws BugError when it has none. */
export function wholeSpan({ start, finish, workDays, calendarDays }: ScheduleResult) {
  if (start === undefined || finish === undefined || workDays === undefined || calendarDays === undefined)
    throw new BugError('a schedule without activities has no dates');
  return { start, finish, workDays, calendarDays };
}
