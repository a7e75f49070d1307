import { at, known, valueAt } from '../../base';
import { monthOf } from '../../calendar';
import type { Funding } from '../../project';
import { TRIALS_PER_CHUNK, type MoneyBatch } from '../../risk';
import type { ChainScheduler } from '../../scheduling';
import type { WholeParts } from './parts';
import { dateRules, fillFinishDays, fillGreatest, fillLeast, fillStartDays, spanRules } from './trial-days';

/** Money that comes back: the share of every payment, and the months until it does. */
interface Returned {
  readonly share: number;
  readonly months: number;
}

/** Works out the greatest cash need of each trial of a batch, from the costs of its lines. */
export type CashNeed = (batch: MoneyBatch, lines: readonly Float64Array[]) => Float64Array;

/**
 * The greatest cash need of trials: what has been paid and will be reimbursed, and has not been yet, at the end of the
 * month where that is most. Lines are paid evenly over the days of their work; obligations after the sinking are left
 * out, and so are caps of a source and money held back from a contractor: the cash view of the plan has those.
 * @returns undefined where no source reimburses a share after some months.
 */
export function cashNeedOf(
  parts: WholeParts,
  scheduler: ChainScheduler,
  funding: Funding | undefined,
  standby: number,
): CashNeed | undefined {
  const returned = (funding?.sources ?? []).flatMap(({ mode, share, lagMonths }): Returned[] =>
    mode === 'reimbursement' && share !== undefined && lagMonths > 0
      ? [{ share: Number(share.value), months: lagMonths }]
      : [],
  );
  if (returned.length === 0) return undefined;
  const months = monthsOf(scheduler);
  const spenders = spendersOf(parts, scheduler, standby);
  /** By month and then by trial. */
  const paid = new Float64Array(months.count * TRIALS_PER_CHUNK);
  const need = new Float64Array(TRIALS_PER_CHUNK);
  return (batch, lines) => {
    paid.fill(0);
    for (const { line, from, to } of spenders) {
      spend(paid, months, { from: from(batch), to: to(batch), dollars: at(lines, line) }, batch.n);
    }
    greatestGaps(paid, returned, need, batch.n);
    return need;
  };
}

interface Months {
  /** The month of each day of the horizon, counted from the first. */
  readonly ofDay: Int32Array;
  /** First day of each month, and the end. */
  readonly starts: readonly number[];
  readonly count: number;
}

function monthsOf({ first, horizon }: ChainScheduler): Months {
  const starts: number[] = [];
  let last = '';
  const ofDay = Int32Array.from({ length: horizon }, (_, day) => {
    const month = monthOf(first + day);
    if (month !== last) starts.push(day);
    last = month;
    return starts.length - 1;
  });
  return { ofDay, starts: [...starts, horizon], count: starts.length };
}

/** Fills the first or last days of some spending, by trial, in an array that is used again. */
type DaysOf = (batch: MoneyBatch) => Float64Array;

interface Spender {
  readonly line: number;
  readonly from: DaysOf;
  readonly to: DaysOf;
}

/** The lines whose days follow from the schedule, with those days. */
function spendersOf(parts: WholeParts, scheduler: ChainScheduler, standby: number): Spender[] {
  const lineOf = new Map(parts.work.rows.map((row, line) => [row.item.id, line]));
  const rules = dateRules(parts, scheduler);
  const [first, last] = [new Float64Array(TRIALS_PER_CHUNK), new Float64Array(TRIALS_PER_CHUNK)];
  const filled =
    (out: Float64Array, fill: (batch: MoneyBatch, out: Float64Array) => void) => (batch: MoneyBatch) => {
      fill(batch, out);
      return out;
    };
  const activities = scheduler.activities.map((id, i): Spender => {
    const [line, rule] = [known(lineOf, id), at(rules, i)];
    const from = filled(first, (batch, out) => {
      fillStartDays(rule, batch, out);
    });
    const to = filled(last, (batch, out) => {
      fillFinishDays(rule, batch, out);
    });
    return { line, from, to };
  });
  const spans = spanRules(parts, scheduler).map(({ id, from, to }): Spender => {
    const line = known(lineOf, id);
    const [begins, ends] = [from.map(i => at(rules, i)), to.map(i => at(rules, i))];
    const begin = filled(first, (batch, out) => {
      fillLeast(begins, batch, out, standby);
    });
    const end = filled(last, (batch, out) => {
      fillGreatest(ends, batch, out);
    });
    return { line, from: begin, to: end };
  });
  return [...activities, ...spans];
}

/** Spends the dollars of each trial evenly over its days; what lies beyond the horizon has no month. */
function spend(
  paid: Float64Array,
  { ofDay, starts }: Months,
  { from, to, dollars }: { from: Float64Array; to: Float64Array; dollars: Float64Array },
  n: number,
): void {
  for (let t = 0; t < n; t++) {
    const began = valueAt(from, t);
    const [first, last] = [Math.max(0, began), Math.max(began, valueAt(to, t))];
    const [begin, end, amount] = [ofDay[first], ofDay[last], valueAt(dollars, t)];
    if (begin === undefined || end === undefined) continue;
    if (begin === end) {
      const place = begin * TRIALS_PER_CHUNK + t;
      paid[place] = valueAt(paid, place) + amount;
      continue;
    }
    const perDay = amount / (last - first + 1);
    for (let m = begin; m <= end; m++) {
      const days = Math.min(last + 1, at(starts, m + 1)) - Math.max(first, at(starts, m));
      const place = m * TRIALS_PER_CHUNK + t;
      paid[place] = valueAt(paid, place) + perDay * days;
    }
  }
}

/** What is out and comes back later, at the end of the month where that is most, to the cent. */
function greatestGaps(
  paid: Float64Array,
  returned: readonly Returned[],
  need: Float64Array,
  n: number,
): void {
  const out = new Float64Array(TRIALS_PER_CHUNK);
  need.fill(0);
  for (let month = 0; month < paid.length; month += TRIALS_PER_CHUNK) {
    out.fill(0);
    for (const { share, months } of returned) {
      const back = Math.max(0, month - (months - 1) * TRIALS_PER_CHUNK);
      for (let from = back; from <= month; from += TRIALS_PER_CHUNK)
        for (let t = 0; t < n; t++) out[t] = valueAt(out, t) + share * valueAt(paid, from + t);
    }
    for (let t = 0; t < n; t++) need[t] = Math.max(valueAt(need, t), valueAt(out, t));
  }
  for (let t = 0; t < n; t++) need[t] = Math.round(valueAt(need, t) * 100) / 100;
}
