import { at, byteAt, intAt, known, valueAt } from '../../base';
import { dayFlags, dayOf, monthOf, isoOf } from '../../calendar';
import { isObligation, type PriceChoices } from '../../estimate';
import { TRIALS_PER_CHUNK, type MoneyBatch } from '../../risk';
import type { ChainScheduler, Hammock } from '../../scheduling';
import type { WholeParts } from './parts';

/** Mean days of a month of the Gregorian calendar: 400 years of 146,097 days. */
const DAYS_A_MONTH = 146097 / 4800;
/** Days beyond the horizon that obligations after the sinking may reach. */
const YEARS_AFTER = 40 * 366;

/** Months from the price date to a day, by day from the horizon start; the day before it has its place too. */
export function monthTable(scheduler: ChainScheduler, prices: PriceChoices): Int32Array {
  const table = new Int32Array(scheduler.horizon + YEARS_AFTER);
  if (prices.fixedYear !== undefined) return table;
  const priced = monthNumber(dayOf(prices.priceDate));
  let [last, value] = ['', 0];
  for (let i = 0; i < table.length; i++) {
    const iso = isoOf(scheduler.first + i - 1);
    const month = iso.slice(0, 7);
    if (month !== last) [last, value] = [month, monthNumber(scheduler.first + i - 1) - priced];
    table[i] = value;
  }
  return table;
}

function monthNumber(day: number): number {
  const month = monthOf(day);
  return Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7));
}

/** How the dates of an activity follow from its moments: the days to take off start and finish. */
export interface DateRule {
  readonly at: number;
  readonly fromStart: number;
  /** Off the finish, or off the start for a milestone. */
  readonly fromFinish: number;
  readonly isMilestone: boolean;
  /** The day of an actual start, which no trial moves. */
  readonly begun: number | undefined;
}

/** @returns the date rule of each activity, by position. */
export function dateRules(parts: WholeParts, scheduler: ChainScheduler): DateRule[] {
  const planned = new Map(parts.schedule.activities.map(activity => [activity.id, activity]));
  return scheduler.activities.map((id, position) => {
    const activity = known(planned, id);
    const isMilestone = scheduler.isMilestone[position] === 1;
    const closes = byteAt(scheduler.closes, position);
    return {
      at: position,
      fromStart: closes,
      fromFinish: isMilestone ? closes : 1,
      isMilestone,
      begun: activity.resumed === undefined ? undefined : dayOf(activity.start) - scheduler.first,
    };
  });
}

/** A span that follows activities, by their positions. */
export interface SpanRule {
  readonly id: string;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly unit: 'work-day' | 'day' | 'month';
  /** Work days of its calendar before each day. */
  readonly workDaysBefore: Int32Array;
}

/** The spans of the plan. */
export function spanRules(parts: WholeParts, scheduler: ChainScheduler): SpanRule[] {
  const position = new Map(scheduler.activities.map((id, at) => [id, at]));
  const tables = new Map<string, Int32Array>();
  const units = new Map(parts.planned.map(plan => [plan.item.id, plan.item.span?.unit ?? 'day']));
  const calendars = new Map(Object.entries(parts.problem.calendars));
  const positions = (ids: Hammock['fromStartOf']) => ids.map(id => known(position, id));
  return parts.problem.hammocks.map(hammock => {
    const calendar = known(calendars, hammock.calendar);
    const table =
      tables.get(hammock.calendar) ?? runningDays(dayFlags(calendar, scheduler.first, scheduler.horizon));
    tables.set(hammock.calendar, table);
    return {
      id: hammock.id,
      from: positions(hammock.fromStartOf),
      to: positions(hammock.toFinishOf),
      unit: known(units, hammock.id),
      workDaysBefore: table,
    };
  });
}

function runningDays(flags: Uint8Array): Int32Array {
  const before = new Int32Array(flags.length + 1);
  for (let day = 0; day < flags.length; day++) before[day + 1] = intAt(before, day) + byteAt(flags, day);
  return before;
}

/** How long a span lasts in its unit, from its first day to its last; NaN in work days beyond the horizon. */
export function spanLength({ unit, workDaysBefore }: SpanRule, first: number, last: number): number {
  const days = Math.max(0, last - first + 1);
  if (unit === 'day') return days;
  if (unit === 'month') return Math.round((days / DAYS_A_MONTH) * 10) / 10;
  return (workDaysBefore[first + days] ?? Number.NaN) - (workDaysBefore[first] ?? Number.NaN);
}

/** An obligation of the years after the sinking: it begins when the last of what it follows has finished. */
export interface ObligationRule {
  readonly id: string;
  /** Positions of what it follows; all activities when it follows none that is scheduled. */
  readonly after: readonly number[];
}

/** The obligations of the plan. */
export function obligationRules(parts: WholeParts, scheduler: ChainScheduler): ObligationRule[] {
  const position = new Map(scheduler.activities.map((id, at) => [id, at]));
  return parts.planned
    .filter(({ item }) => isObligation(item))
    .map(({ item }) => {
      const after = item.after.flatMap(link => position.get(link.item) ?? []);
      return { id: item.id, after: after.length > 0 ? after : scheduler.activities.map((_, i) => i) };
    });
}

/** Fills the first day of an activity in each trial. */
export function fillStartDays(rule: DateRule, { n, starts }: MoneyBatch, out: Float64Array): void {
  const { begun, fromStart } = rule;
  if (begun !== undefined) {
    out.fill(begun, 0, n);
    return;
  }
  const moments = at(starts, rule.at);
  for (let t = 0; t < n; t++) out[t] = valueAt(moments, t) - fromStart;
}

/** Fills its last day in each trial. */
export function fillFinishDays(rule: DateRule, { n, starts, finishes }: MoneyBatch, out: Float64Array): void {
  const { fromFinish } = rule;
  const moments = at(rule.isMilestone ? starts : finishes, rule.at);
  for (let t = 0; t < n; t++) out[t] = valueAt(moments, t) - fromFinish;
}

/** The days of one rule among several. */
const oneOfSome = new Float64Array(TRIALS_PER_CHUNK);

/** Fills the first day of some in each trial, days of standing by before it included. */
export function fillLeast(
  rules: readonly DateRule[],
  batch: MoneyBatch,
  out: Float64Array,
  standby: number,
): void {
  const day = oneOfSome;
  out.fill(Infinity, 0, batch.n);
  for (const rule of rules) {
    const waits = at(batch.waits, rule.at);
    fillStartDays(rule, batch, day);
    for (let t = 0; t < batch.n; t++) {
      const stands = valueAt(day, t) - Math.min(valueAt(waits, t), standby);
      if (stands < valueAt(out, t)) out[t] = stands;
    }
  }
}

/** Fills the last day of some in each trial. */
export function fillGreatest(rules: readonly DateRule[], batch: MoneyBatch, out: Float64Array): void {
  const day = oneOfSome;
  out.fill(-Infinity, 0, batch.n);
  for (const rule of rules) {
    fillFinishDays(rule, batch, day);
    for (let t = 0; t < batch.n; t++) {
      const last = valueAt(day, t);
      if (last > valueAt(out, t)) out[t] = last;
    }
  }
}
