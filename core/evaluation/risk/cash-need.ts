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
      const dollars = lines[line];
      if (dollars !== undefined) spend(paid, months, { from: from(batch), to: to(batch), dollars }, batch.n);
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
  const activities = scheduler.activities.flatMap((id, i): Spender[] => {
    const [line, rule] = [lineOf.get(id), rules[i]];
    if (line === undefined || rule === undefined) return [];
    const from = filled(first, (batch, out) => {
      fillStartDays(rule, batch, out);
    });
    const to = filled(last, (batch, out) => {
      fillFinishDays(rule, batch, out);
    });
    return [{ line, from, to }];
  });
  const spans = spanRules(parts, scheduler).flatMap(({ id, from, to }): Spender[] => {
    const line = lineOf.get(id);
    const [begins, ends] = [from.map(i => rules[i]), to.map(i => rules[i])];
    if (line === undefined) return [];
    const begin = filled(first, (batch, out) => {
      fillLeast(begins, batch, out, standby);
    });
    const end = filled(last, (batch, out) => {
      fillGreatest(ends, batch, out);
    });
    return [{ line, from: begin, to: end }];
  });
  return [...activities, ...spans];
}

/** Spends the dollars of each trial evenly over its days. */
function spend(
  paid: Float64Array,
  { ofDay, starts }: Months,
  { from, to, dollars }: { from: Float64Array; to: Float64Array; dollars: Float64Array },
  n: number,
): void {
  for (let t = 0; t < n; t++) {
    const began = from[t] ?? Number.NaN;
    const [first, last] = [Math.max(0, began), Math.max(began, to[t] ?? Number.NaN)];
    const [begin, end, amount] = [ofDay[first], ofDay[last], dollars[t] ?? Number.NaN];
    if (begin === undefined || end === undefined) continue;
    if (begin === end) {
      const at = begin * TRIALS_PER_CHUNK + t;
      paid[at] = (paid[at] ?? 0) + amount;
      continue;
    }
    const perDay = amount / (last - first + 1);
    for (let m = begin; m <= end; m++) {
      const days = Math.min(last + 1, starts[m + 1] ?? 0) - Math.max(first, starts[m] ?? 0);
      const at = m * TRIALS_PER_CHUNK + t;
      paid[at] = (paid[at] ?? 0) + perDay * days;
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
        for (let t = 0; t < n; t++) out[t] = (out[t] ?? 0) + share * (paid[from + t] ?? 0);
    }
    for (let t = 0; t < n; t++) if ((out[t] ?? 0) > (need[t] ?? 0)) need[t] = out[t] ?? 0;
  }
  for (let t = 0; t < n; t++) need[t] = Math.round((need[t] ?? 0) * 100) / 100;
}
